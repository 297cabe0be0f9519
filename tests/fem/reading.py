"""Reads what CalculiX printed and measures it as the prediction is measured."""
import bisect
import math
from dataclasses import dataclass

import deck
import geometry
import pull


@dataclass(frozen=True)
class Frame:
    """The panel at one increment: whether it is let go by then, the time, force per width and direction, angle of its end, mid line, where the form's lead-out is."""

    released: bool
    time: float
    force: float
    direction: float  # of the force: the angle that the end was taken to have
    angle: float
    line: list
    turn: float  # of the form's end
    shift: tuple  # of the place where the wrap is complete


def frames(path, part, form, load, release=None):
    """Every complete increment, in order. Reads a file that is still being written as far as it goes."""
    found = []
    try:
        file = open(path, encoding="ascii")
    except FileNotFoundError:
        return found
    wanted = len(part.mid) + len(part.follow)
    with file:
        time, moves = None, {}
        for line in file:
            if line.startswith(" displacements"):
                time, moves = float(line.split()[-1]), {}
                continue
            words = line.split()
            if len(words) == 4 and line.endswith("\n") and time is not None:
                moves[int(words[0])] = (float(words[1]), float(words[2]))
                if len(moves) == wanted:
                    found.append(frame(part, form, load, release, time, moves))
    return found


def frame(part, form, load, release, time, moves):
    def place(n):
        return (part.places[n][0] + moves[n][0], part.places[n][1] + moves[n][1])

    line = [place(n) for n in part.mid]
    hand = part.mid.index(part.hand)
    (ax, ay), (bx, by) = line[hand - 2], line[hand]
    turn, shift = 0.0, (0.0, 0.0)
    if part.follow:
        (ax0, ay0), (bx0, by0) = (part.places[n] for n in part.follow)
        (ax1, ay1), (bx1, by1) = (place(n) for n in part.follow)
        turn = math.atan2(by1 - ay1, bx1 - ax1) - math.atan2(by0 - ay0, bx0 - ax0)
        cx, cy = form.centres()[-1]
        x, y = cx - ax0, cy - ay0
        shift = (ax1 + x * math.cos(turn) - y * math.sin(turn) - cx, ay1 + x * math.sin(turn) + y * math.cos(turn) - cy)
    # Past half a turn the angle goes on growing.
    angle = math.atan2(by - ay, bx - ax)
    if angle < -math.pi / 2:
        angle += 2 * math.pi
    is_released = time > 1 + 1e-6
    force, direction = pull.at(release, (time - 1) / deck.RELEASE) if is_released else pull.at(load, time)
    return Frame(is_released, time, force, direction, angle, line, turn, shift)


def gap(frame, form, place):
    """Gap between mid line and a fold's circle, or, last, the place on the lead-out; the form's own movement is left to contact."""
    x, y = form.centres()[place]
    if place == len(form.angles):
        x, y = x + frame.shift[0], y + frame.shift[1]
    return geometry.nearest(frame.line, (x, y))[0] - form.radius


def touch(pulled, form, place, close=0.01):
    """Force and end angle at which a place is first met, between two increments; None where it was not."""
    for before, after in zip(pulled, pulled[1:]):
        start, end = gap(before, form, place) - close, gap(after, form, place) - close
        if end <= 0:
            share = start / (start - end) if start > 0 else 0
            return tuple(a + share * (b - a) for a, b in ((before.force, after.force), (before.angle, after.angle)))
    return None


def released(frame, top, form, part):
    """Sweep, radius over the middle folds and every facet's ripple; folds lie where the panel touched them at the top of the pull."""
    along = [part.places[n][0] for n in part.mid]

    def met(fold):
        if fold == 0:
            return 0.0
        where = geometry.nearest(top.line, form.centres()[fold])[1]
        i = min(int(where), len(along) - 2)
        return along[i] + (where - i) * (along[i + 1] - along[i])

    def run(start, end, count=120):
        found = []
        for k in range(count + 1):
            s = start + (end - start) * k / count
            i = min(max(0, bisect.bisect_right(along, s) - 1), len(along) - 2)
            found.append(geometry.at(frame.line, i + (s - along[i]) / (along[i + 1] - along[i])))
        return found

    folds = [met(j) for j in range(len(form.angles))]
    first, last = form.middle()
    radius = 1 / geometry.circle_curvature(run(folds[first], folds[last]))
    ripples = [geometry.ripple(run(a, b)) for a, b in zip(folds, folds[1:])]
    return frame.angle, radius, ripples
