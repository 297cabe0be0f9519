"""Callers who ask again at once, each over one connection: by status, how many answers and how soon.

Prints one line a status: count, median and 99th percentile [ms].
Arguments: address of the service, file with a request, callers, seconds.
"""

import asyncio
import sys
import time
from urllib.parse import urlsplit


async def caller(host, port, request, until, times):
    reader, writer = await asyncio.open_connection(host, port)
    while time.monotonic() < until:
        started = time.monotonic()
        writer.write(request)
        head = await reader.readuntil(b"\r\n\r\n")
        while size := int(await reader.readline(), 16):
            await reader.readexactly(size + 2)
        await reader.readexactly(2)
        times.setdefault(int(head[9:12]), []).append(1000 * (time.monotonic() - started))
    writer.close()


async def main():
    address, body = urlsplit(sys.argv[1]), open(sys.argv[2], "rb").read()
    head = f"POST /v1/forms HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\nContent-Length: {len(body)}\r\n\r\n".encode()
    times, until = {}, time.monotonic() + float(sys.argv[4])
    await asyncio.gather(*[caller(address.hostname, address.port, head + body, until, times) for _ in range(int(sys.argv[3]))])
    for status, taken in sorted(times.items()):
        taken.sort()
        print(f"  {status}: {len(taken)}, median {taken[len(taken) // 2]:.1f} ms, p99 {taken[int(0.99 * (len(taken) - 1))]:.1f} ms")


asyncio.run(main())
