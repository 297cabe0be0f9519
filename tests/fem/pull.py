"""The force's direction as it grows, guessed from the prediction's touches so that a first run can be made."""
import math
from bisect import bisect_left


class Bend:
    """Curvature against moment of the panel, by layers: enough for a guess."""

    def __init__(self, sheet):
        stiff = sheet.modulus / (1 - sheet.poisson ** 2)
        plane = 2 / math.sqrt(3)
        first = plane * sheet.strength * sheet.prestrain ** sheet.hardening
        half, layers = sheet.thickness / 2, 40
        elastic = first / (stiff * half)
        self.curvatures = [0.0] + [elastic * 1.08 ** i for i in range(70)]
        self.moments = []
        for k in self.curvatures:
            total = 0.0
            for i in range(layers):
                y = half * (i + 0.5) / layers
                total += self.stress(k * y, stiff, plane, first, sheet) * y * half / layers
            self.moments.append(2 * total)

    @staticmethod
    def stress(strain, stiff, plane, first, sheet):
        if stiff * strain <= first:
            return stiff * strain
        p = strain - first / stiff
        for _ in range(30):
            p = max(0.0, strain - plane * sheet.strength * (sheet.prestrain + plane * p) ** sheet.hardening / stiff)
        return stiff * (strain - p)

    def curvature(self, moment):
        i = min(max(1, bisect_left(self.moments, moment)), len(self.moments) - 1)
        share = (moment - self.moments[i - 1]) / (self.moments[i] - self.moments[i - 1])
        return self.curvatures[i - 1] + share * (self.curvatures[i] - self.curvatures[i - 1])

    def turn(self, force, lever):
        """How far a free side of that length turns."""
        pieces = 40
        return sum(self.curvature(force * lever * (i + 0.5) / pieces) for i in range(pieces)) * lever / pieces


def path(form, sheet, touches, beyond=0.0):
    """The pull as (time 0-1, force per width, direction), through the force and end angle of every touch, and on past the last by a share.

    Between two touches the free side turns first as an elastic sheet, then as one that bends for good: half-way between a straight line and
    what a sheet without a past would do. Time runs with force and direction alike, for the end turns far while the force hardly grows.
    """
    bend, spans = Bend(sheet), form.spans()
    found, before = [(0.0, 0.0)], (0.0, 0.0)
    for j, touch in enumerate(touches):
        lever = form.lever + sum(spans[j:-1])
        start, end = bend.turn(before[0], lever), bend.turn(touch[0], lever)
        even = 0.5 if j else 0.0
        for i in range(1, 21):
            force = before[0] + (touch[0] - before[0]) * i / 20
            share = (1 - even) * (bend.turn(force, lever) - start) / (end - start) + even * i / 20
            found.append((force, before[1] + share * (touch[1] - before[1])))
        before = touch
    return timed(found, beyond)


def along(frames, beyond=0.0):
    """The pull through the force and end angle of every frame of a run before, and on past the last by a share."""
    found = [(0.0, 0.0)]
    for frame in frames:
        if frame.force > found[-1][0] and frame.angle > found[-1][1]:
            found.append((frame.force, frame.angle))
    return timed(found, beyond)


def timed(found, beyond):
    """Forces and directions with their times, and on past the last by a share of the force."""
    if beyond:
        (f0, a0), (f1, a1) = found[-10], found[-1]
        found.append((f1 * (1 + beyond), a1 + (a1 - a0) / (f1 - f0) * f1 * beyond))
    force, angle = found[-1]
    return [(0.4 * f / force + 0.6 * a / angle, f, a) for f, a in found]


def let_go(load, angle):
    """From the end of a pull to no force, while the end turns back to an angle."""
    _, force, start = load[-1]
    return [(i / 20, force * (1 - i / 20), start + (angle - start) * i / 20) for i in range(21)]


def at(load, time):
    """Force and direction at a time."""
    for (t0, f0, a0), (t1, f1, a1) in zip(load, load[1:]):
        if time <= t1 + 1e-9:
            share = (time - t0) / (t1 - t0)
            return f0 + share * (f1 - f0), a0 + share * (a1 - a0)
    return load[-1][1:]
