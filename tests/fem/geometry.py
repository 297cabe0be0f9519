"""The form as the panel meets it, and what is measured on a row of points. Lengths in mm, angles in radians."""
import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Form:
    """A faceted form: the first tangent point is at the origin of the panel's mid surface, the lead-in runs along the x axis."""

    angles: list  # fold angles
    facets: list  # mold line to mold line, on the contact side; one fewer than folds
    fold_radius: float  # outside radius of the folds
    panel: float  # thickness of the panel
    lever: float  # hand beyond the last fold, along the sheet

    @property
    def radius(self):
        """Radius of the circles on which the mid surface touches the folds."""
        return self.fold_radius + self.panel / 2

    def setback(self, fold):
        return self.fold_radius * math.tan(self.angles[fold] / 2)

    def chords(self):
        """Straight part after each fold; the last reaches to where the wrap is complete, one facet on along the lead-out."""
        inner = [c - self.setback(j) - self.setback(j + 1) for j, c in enumerate(self.facets)]
        landing = self.facets[-1] - self.setback(len(self.angles) - 1) if self.facets else self.lever
        return inner + [min(landing, self.lever / 2)]

    def centres(self):
        """Centres of the folds, and last the place on the lead-out where the wrap is complete."""
        places, heading = [(0.0, self.radius)], 0.0
        for angle, chord in zip(self.angles, self.chords()):
            heading += angle
            x, y = places[-1]
            places.append((x + chord * math.cos(heading), y + chord * math.sin(heading)))
        return places

    def headings(self):
        """Direction of the facet before each fold, and last that of the lead-out."""
        found = [0.0]
        for angle in self.angles:
            found.append(found[-1] + angle)
        return found

    def spans(self):
        """Lengths of the mid surface from fold to fold, as a smooth arc over both."""
        found = []
        for j, chord in enumerate(self.chords()):
            last = j == len(self.angles) - 1
            turn = self.angles[j] / (1 if j == 0 else 2) + (0 if last else self.angles[j + 1] / 2)
            found.append(chord * (turn / 2) / math.sin(turn / 2) + self.radius * turn)
        return found

    def middle(self):
        """The folds over which the radius is measured, by index."""
        folds = len(self.angles)
        return (2 if folds > 4 else 0, folds - 2 if folds > 5 else folds - 1)


def circle_curvature(points):
    """Curvature of the circle that lies nearest to the points, by least squares of the algebraic distance, then of the true one."""
    n = len(points)
    mx, my = sum(p[0] for p in points) / n, sum(p[1] for p in points) / n
    rows = [(x - mx, y - my) for x, y in points]
    a, b, c = solve3([[sum(f(r, i) * f(r, j) for r in rows) for j in range(3)] for i in range(3)],
                     [sum(f(r, i) * (r[0] ** 2 + r[1] ** 2) for r in rows) for i in range(3)])
    cx, cy = a / 2, b / 2
    radius = math.sqrt(c + cx * cx + cy * cy)
    for _ in range(30):
        matrix, right = [[0.0] * 3 for _ in range(3)], [0.0] * 3
        for x, y in rows:
            d = math.hypot(x - cx, y - cy)
            g = ((cx - x) / d, (cy - y) / d, -1.0)
            for i in range(3):
                right[i] -= g[i] * (d - radius)
                for j in range(3):
                    matrix[i][j] += g[i] * g[j]
        dx, dy, dr = solve3(matrix, right)
        cx, cy, radius = cx + dx, cy + dy, radius + dr
        if abs(dr) < 1e-12 * radius:
            break
    return 1 / radius


def f(row, i):
    return (row[0], row[1], 1.0)[i]


def solve3(matrix, right):
    rows = [list(m) + [r] for m, r in zip(matrix, right)]
    for i in range(3):
        pivot = max(range(i, 3), key=lambda k: abs(rows[k][i]))
        rows[i], rows[pivot] = rows[pivot], rows[i]
        for k in range(3):
            if k != i:
                share = rows[k][i] / rows[i][i]
                rows[k] = [a - share * b for a, b in zip(rows[k], rows[i])]
    return [rows[i][3] / rows[i][i] for i in range(3)]


def nearest(points, place):
    """Least distance of a place from a row of points joined by straights: the distance and where along the row, in points."""
    best = (math.inf, 0.0)
    for i in range(len(points) - 1):
        (ax, ay), (bx, by) = points[i], points[i + 1]
        ux, uy = bx - ax, by - ay
        share = ((place[0] - ax) * ux + (place[1] - ay) * uy) / (ux * ux + uy * uy)
        share = min(1.0, max(0.0, share))
        d = math.hypot(ax + share * ux - place[0], ay + share * uy - place[1])
        if d < best[0]:
            best = (d, i + share)
    return best


def at(points, where):
    """The place at a position along a row of points, given in points."""
    i = min(int(where), len(points) - 2)
    share = where - i
    (ax, ay), (bx, by) = points[i], points[i + 1]
    return ax + share * (bx - ax), ay + share * (by - ay)


def ripple(points):
    """Peak to valley of a row of points from its own smooth arc through both ends, with the mean curvature of the row."""
    (ax, ay), (bx, by) = points[0], points[-1]
    length = math.hypot(bx - ax, by - ay)
    ux, uy = (bx - ax) / length, (by - ay) / length
    rows = [((x - ax) * ux + (y - ay) * uy, (y - ay) * ux - (x - ax) * uy) for x, y in points]

    # The arc: the parabola-like sagitta that leaves least squares; over one facet the difference from a circle is of fourth order.
    top = sum(v * s * (length - s) for s, v in rows)
    bend = top / sum((s * (length - s)) ** 2 for s, _ in rows)
    curvature = -2 * bend

    def arc(s):
        if abs(bend) < 1e-12:
            return 0.0
        r = 1 / abs(curvature)
        rise = math.sqrt(r * r - (s - length / 2) ** 2) - math.sqrt(r * r - length * length / 4)
        return math.copysign(rise, bend)

    off = [v - arc(s) for s, v in rows]
    return max(off) - min(off)
