"""Callers who only hold sockets, beside an honest one whose slowest answers are compared with what they were before.

Prints one line a kind of caller: how many sockets, the honest caller's 99th percentile before and during, and their ratio.
Arguments: address of the service, file with a request, connections a kind is divided by (1 for the full numbers).
"""

import asyncio
import sys
import time
from urllib.parse import urlsplit

SECONDS = 8
KINDS = {
    "idle": (10000, b""),
    "slow header": (1000, b"POST /v1/forms HTTP/1.1\r\nHost: here\r\nX-Slow: "),
    "slow body": (1000, b"POST /v1/forms HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\nContent-Length: 100000\r\n\r\n{"),
    "slow batch": (200, b"POST /v1/batches HTTP/1.1\r\nHost: here\r\nContent-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n"),
}


async def honest(host, port, body, seconds):
    """Times single requests over one connection; returns the 99th percentile [ms] and how many were not answered with 200."""
    reader, writer = await asyncio.open_connection(host, port)
    head = f"POST /v1/forms HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\nContent-Length: {len(body)}\r\n\r\n".encode()
    times, bad, until = [], 0, time.monotonic() + seconds
    while time.monotonic() < until:
        started = time.monotonic()
        writer.write(head + body)
        answer = await reader.readuntil(b"\r\n\r\n")
        if b" 200 " not in answer.split(b"\r\n", 1)[0]:
            bad += 1
        while True:
            size = int(await reader.readline(), 16)
            await reader.readexactly(size + 2)
            if size == 0:
                break
        times.append(1000 * (time.monotonic() - started))
    writer.close()
    times.sort()
    return times[int(0.99 * (len(times) - 1))], bad


async def held(host, port, sent, count):
    """Opens sockets that send a beginning and then a byte a second."""
    sockets = []
    for first in range(0, count, 200):
        opened = await asyncio.gather(*[asyncio.open_connection(host, port) for _ in range(min(200, count - first))])
        sockets += [writer for _, writer in opened]
        for _, writer in opened:
            writer.write(sent)
    return sockets


async def dribble(sockets):
    while True:
        await asyncio.sleep(1)
        for writer in sockets:
            if not writer.is_closing():
                writer.write(b"1")


async def main():
    address, request, share = urlsplit(sys.argv[1]), sys.argv[2], int(sys.argv[3]) if len(sys.argv) > 3 else 1
    host, port = address.hostname, address.port
    with open(request, "rb") as file:
        body = file.read()
    await honest(host, port, body, SECONDS)
    worst = 0.0
    for kind, (count, sent) in KINDS.items():
        before, bad_before = await honest(host, port, body, SECONDS)
        sockets = await held(host, port, sent, count // share)
        slow = asyncio.create_task(dribble(sockets if sent else []))
        during, bad = await honest(host, port, body, SECONDS)
        slow.cancel()
        for writer in sockets:
            writer.transport.abort()
        await asyncio.sleep(1)
        worst = max(worst, during / before)
        print(f"{len(sockets)} {kind}: p99 {before:.1f} ms before, {during:.1f} ms during, ratio {during / before:.2f}, {bad + bad_before} not 200", flush=True)
        if bad + bad_before:
            return 1
    return 0 if worst <= 3 else 1


sys.exit(asyncio.run(main()))
