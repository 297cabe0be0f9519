"""Reads what CalculiX printed and measures it as the prediction is measured."""
import bisect
import math
import re
from dataclasses import dataclass, replace

import deck
import geometry
import pull


@dataclass(frozen=True)
class Frame:
    """The panel at one increment: whether it is let go by then, force per width, angle of its end, mid line, moments."""

    released: bool
    time: float
    force: float
    direction: float  # of the force: the angle that the end was taken to have
    angle: float
    line: list
    moments: list  # of each element along the panel, at its two integration stations [N mm/mm]
    turn: float  # of the form's end
    shift: tuple  # of the place where the wrap is complete


class Reader:
    """Reads the printed increments of a run, also while it goes on: each look reads only what was added."""

    def __init__(self, path, part, form, load, release=None):
        self.path, self.part, self.form, self.load, self.release = path, part, form, load, release
        self.rows = {element: (i, j) for i, row in enumerate(part.rows) for j, element in enumerate(row)}
        self.position, self.rest, self.frames = 0, "", []
        self.time, self.moves, self.stresses = None, {}, {}

    def look(self):
        try:
            with open(self.path, encoding="ascii") as file:
                file.seek(self.position)
                text = self.rest + file.read()
                self.position = file.tell()
        except FileNotFoundError:
            return self.frames
        *lines, self.rest = text.split("\n")
        for line in lines:
            self.take(line)
        return self.frames

    def take(self, line):
        words = line.split()
        if line.startswith(" displacements"):
            self.time, self.moves, self.stresses = float(words[-1]), {}, {}
        elif len(words) == 4:
            self.moves[int(words[0])] = (number(words[1]), number(words[2]))
        elif len(words) == 8 and words[0].isdigit():
            element, point = int(words[0]), int(words[1])
            # The solver gives a plane element a depth; the points behind the first four repeat them.
            if point <= 4:
                self.stresses[element, point] = (number(words[2]), number(words[3]), number(words[5]))
            if point == 8 and len(self.stresses) == 4 * len(self.rows):
                self.frames.append(self.frame())
                self.stresses = {}

    def place(self, node):
        (x, y), (dx, dy) = self.part.places[node], self.moves[node]
        return x + dx, y + dy

    def frame(self):
        part, form, time = self.part, self.form, self.time
        line = [self.place(n) for n in part.mid]
        hand = part.mid.index(part.hand)
        (ax, ay), (bx, by) = line[hand - 2], line[hand]
        turn, shift = 0.0, (0.0, 0.0)
        if part.follow:
            (ax0, ay0), (bx0, by0) = (part.places[n] for n in part.follow)
            (ax1, ay1), (bx1, by1) = (self.place(n) for n in part.follow)
            turn = math.atan2(by1 - ay1, bx1 - ax1) - math.atan2(by0 - ay0, bx0 - ax0)
            cx, cy = form.centres()[-1]
            x, y = cx - ax0, cy - ay0
            shift = (ax1 + x * math.cos(turn) - y * math.sin(turn) - cx, ay1 + x * math.sin(turn) + y * math.cos(turn) - cy)
        # Past half a turn the angle goes on growing.
        angle = math.atan2(by - ay, bx - ax)
        if angle < -math.pi / 2:
            angle += 2 * math.pi
        is_released = time > 1 + 1e-6
        force, direction = pull.at(self.release, (time - 1) / deck.RELEASE) if is_released else pull.at(self.load, time)
        return Frame(is_released, time, force, direction, angle, line, self.moments(line), turn, shift)

    def moments(self, line):
        """Moments about the mid line from the stresses along it, by the solver's own integration points."""
        layers = len(self.part.rows[0])
        layer = self.form.panel / layers
        found = [[0.0, 0.0] for _ in self.part.rows]
        headings = [[heading(line[2 * i:2 * i + 3], xi) for xi in (-GAUSS, GAUSS)] for i in range(len(found))]
        for (element, point), (sxx, syy, sxy) in self.stresses.items():
            i, j = self.rows[element]
            side, above = (point - 1) % 2, GAUSS if point > 2 else -GAUSS
            c, s = headings[i][side]
            along = sxx * c * c + syy * s * s + 2 * sxy * c * s
            found[i][side] -= along * layer * (j + 0.5 + above / 2 - layers / 2) * layer / 2
        return found


GAUSS = 1 / math.sqrt(3)


def number(text):
    """The solver leaves out the E where an exponent has three digits: -1.774567-100."""
    try:
        return float(text)
    except ValueError:
        return float(re.sub(r"(\d)([+-]\d{3})$", r"\1E\2", text))


def heading(nodes, xi):
    """Cosine and sine of the mid line's direction within an element, -1 to 1 along it."""
    (ax, ay), (bx, by), (cx, cy) = nodes
    x, y = (cx - ax) / 2 + xi * (ax - 2 * bx + cx), (cy - ay) / 2 + xi * (ay - 2 * by + cy)
    size = math.hypot(x, y)
    return x / size, y / size


def between(before, after, share):
    """The increment that lies at a share of the way from one to another."""
    def mix(a, b):
        if isinstance(a, (list, tuple)):
            return type(a)(mix(p, q) for p, q in zip(a, b))
        return a + share * (b - a)

    mixed = {k: mix(v, getattr(after, k)) for k, v in vars(before).items() if k != "released"}
    return Frame(released=after.released, **mixed)


def let_go(frame, part, stiffness):
    """The panel once every moment in it is gone elastically: each piece turns back by the moments between the clamp and it."""
    start = next(i for i, n in enumerate(part.mid) if part.places[n][0] > -1e-9)
    line, back = list(frame.line[:start + 1]), 0.0
    for i in range(start, len(frame.line) - 2, 2):
        one, two = frame.moments[i // 2]
        mean, slope = (one + two) / 2, (two - one) / (2 * GAUSS)
        length = part.places[part.mid[i + 2]][0] - part.places[part.mid[i]][0]
        for k, xi in ((i, -0.5), (i + 1, 0.5)):
            turn = back + (mean * (xi + 1) + slope * (xi * xi - 1) / 2) * length / 2 / stiffness
            x, y = frame.line[k + 1][0] - frame.line[k][0], frame.line[k + 1][1] - frame.line[k][1]
            c, s = math.cos(turn), math.sin(turn)
            line.append((line[-1][0] + c * x + s * y, line[-1][1] - s * x + c * y))
        back += mean * length / stiffness
    return replace(frame, released=True, force=0.0, angle=frame.angle - back, line=line)


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


def completed(pulled, form):
    """The increments up to the completed wrap, the last of them set between the two that enclose it."""
    place, kept = len(form.angles), []
    for before, after in zip(pulled, pulled[1:]):
        kept.append(before)
        start, end = gap(before, form, place), gap(after, form, place)
        if end <= 0:
            return kept + [between(before, after, start / (start - end))]
    return pulled


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
