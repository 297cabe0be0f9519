"""Requests changed at random, each a committed example with one to three changes: none may be answered 5xx, none late.

Prints how often each status was answered and the slowest answer; ends with 1 where a 5xx or a late answer came.
Arguments: address of the service, how many requests, latest answer [s], connections, seed, share of quick ones (0.75).
A quick one is of an arc and an operation that takes a millisecond, planned without a simulated pull, and mostly answered shortly, which looks for no
remedies: a million of others takes a night.
"""

import asyncio
import collections
import copy
import json
import pathlib
import random
import sys
import time
from urllib.parse import urlsplit

ROOT = pathlib.Path(__file__).resolve().parents[2]
QUICK = {"/v1/forms", "/v1/estimates", "/v1/tolerances", "/v1/test-strips/stop", "/v1/test-strips/neutral-factor"}
VALUES = [0, -1, 1, 2, 3.5, 45, 89.9, 180, 359.9, 360, 1000, 99999, 1e6, 1e308, -1e308, 1e-320, 2147483648, None, True, "", "NaN", "mm", "in",
          "arc", "press", "hidden", "4 1/2", "20 ga", [], {}, [[]], [1, 2], [None]]


def seeds():
    """Every request that is sent by POST: its path and its body."""
    contract = json.loads((ROOT / "openapi/form-api.v1.json").read_text())
    paths = {way["post"]["operationId"]: path for path, way in contract["paths"].items() if "post" in way}
    for file in sorted((ROOT / "openapi/examples").glob("*.request.json")):
        operation = file.name.split(".")[0]
        if operation in paths:
            yield paths[operation], json.loads(file.read_text())


def places(node, at=()):
    """Every place in a body."""
    for key, value in node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ():
        yield (*at, key)
        yield from places(value, (*at, key))


def value_at(node, place):
    for key in place:
        node = node[key]
    return node


def spoil(body, chance, is_quick):
    body = copy.deepcopy(body)
    if is_quick and isinstance(body.get("panel"), dict) and "stations" not in body:
        body["panel"]["springback"] = {"model": "pure-bending"}
    for _ in range(chance.randint(1, 3)):
        every = list(places(body))
        if not every:
            break
        # Numbers first: a shape that is wrong is refused before anything is calculated.
        numbers = [place for place in every if isinstance(value_at(body, place), (int, float))]
        *way, last = chance.choice(numbers if numbers and chance.random() < 0.8 else every)
        holder = body
        for key in way:
            holder = holder[key]
        what, is_number = chance.random(), isinstance(holder[last], (int, float)) and not isinstance(holder[last], bool)
        if is_number and what < 0.75:
            # Most by a little: what is far off is refused by its range.
            holder[last] *= chance.uniform(0.3, 3) if what < 0.6 else 10.0 ** chance.uniform(-3, 3)
        elif what < 0.85 and isinstance(holder, dict):
            del holder[last]
        elif what < 0.88 and isinstance(holder, dict):
            holder[chance.choice(["width", "radius", "none", "units", "at"])] = holder[last]
        else:
            holder[last] = copy.deepcopy(chance.choice(VALUES))
    sent = json.dumps(body).encode()
    if chance.random() < 1 / 16:
        at = chance.randrange(len(sent))
        sent = sent[:at] + bytes([chance.randrange(256)]) + sent[at + 1:]
    return sent[:chance.randrange(len(sent))] if chance.random() < 1 / 40 else sent


async def main():
    address, count, latest, connections, seed = urlsplit(sys.argv[1]), int(sys.argv[2]), float(sys.argv[3]), int(sys.argv[4]), int(sys.argv[5])
    share = float(sys.argv[6]) if len(sys.argv) > 6 else 0.75
    chance, good, left = random.Random(seed), list(seeds()), iter(range(count))
    quick = [one for one in good if one[0] in QUICK and one[1].get("panel", {}).get("curve", {}).get("type", "arc") == "arc"]
    tally, slowest, bad = collections.Counter(), (0.0, ""), []

    async def caller():
        nonlocal slowest
        reader, writer = await asyncio.open_connection(address.hostname, address.port, limit=1 << 24)
        for number in left:
            is_quick = chance.random() < share
            path, body = chance.choice(quick if is_quick else good)
            sent = spoil(body, chance, is_quick)
            prefer = "Prefer: return=minimal\r\n" if is_quick and chance.random() < 0.95 else ""
            started = time.monotonic()
            writer.write(f"POST {path} HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\n{prefer}Content-Length: {len(sent)}\r\n\r\n".encode() + sent)
            head = (await reader.readuntil(b"\r\n\r\n")).lower()
            status = int(head[9:12])
            if b"content-length:" in head:
                await reader.readexactly(int(head.split(b"content-length:")[1].split(b"\r\n")[0]))
            elif status not in (204, 304):
                while size := int(await reader.readline(), 16):
                    await reader.readexactly(size + 2)
                await reader.readexactly(2)
            taken = time.monotonic() - started
            tally[status] += 1
            slowest = max(slowest, (taken, f"{path} {sent[:2000].decode(errors='replace')}"))
            if status >= 500 or taken > latest:
                bad.append(f"{number}: {status} after {taken:.1f} s: {path} {sent[:2000].decode(errors='replace')}")
            if b"connection: close" in head:
                writer.close()
                reader, writer = await asyncio.open_connection(address.hostname, address.port, limit=1 << 24)
        writer.close()

    await asyncio.gather(*[caller() for _ in range(connections)])
    print(f"{count} requests changed at random by seed {seed}: " + ", ".join(f"{n} answered {status}" for status, n in sorted(tally.items()))
          + f"; slowest {slowest[0]:.2f} s")
    if bad:
        print(f"NOT MET: {len(bad)} answered 5xx or later than {latest} s; the first: {bad[0]}")
    sys.exit(1 if bad else 0)


asyncio.run(main())
