"""Writes a CalculiX deck: plane strain, large strain, the panel pulled over the form by a force that follows its end."""
import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Sheet:
    """A sheet: modulus, Poisson's ratio, thickness and, for a panel, its flow curve K (eps0 + plastic strain)^n."""

    modulus: float
    poisson: float
    thickness: float
    strength: float = 0.0
    prestrain: float = 0.0
    hardening: float = 0.0


@dataclass(frozen=True)
class Mesh:
    """How finely it is divided, how hard the folds push back and how the load is stepped."""

    layers: int = 6  # elements through the panel
    along: float = 1.1  # length of its elements [mm]
    face: float = 0.1  # length of the faces of a fold [mm]
    penalty: float = 2e4  # [N/mm3]
    step: float = 0.005  # largest increment, as a share of the pull


TAIL = 3.0  # free panel behind the clamped column
BEYOND = 2.0  # panel beyond the hand
FLAT = 0.6  # of each facet beside a fold that can be touched
RELEASE = 0.25  # time of the release; the pull takes 1


class Part:
    """A strip of quadrilaterals, quadratic or linear, built from stations along it and levels across it."""

    def __init__(self, first_node, first_element, quadratic):
        self.first_node, self.element, self.quadratic = first_node, first_element, quadratic
        self.nodes, self.elements, self.columns, self.rows = [], [], [], []

    def build(self, stations, levels, place):
        """Stations and levels include the middle nodes of quadratic elements; place gives the point of a station and a level."""
        step = 2 if self.quadratic else 1
        numbers, node = {}, self.first_node
        for i, station in enumerate(stations):
            for j, level in enumerate(levels):
                if step == 2 and i % 2 and j % 2:
                    continue
                numbers[i, j] = node
                self.nodes.append((node, *place(station, level)))
                node += 1
        for i in range(0, len(stations) - 1, step):
            row = []
            for j in range(0, len(levels) - 1, step):
                k = [numbers[i, j], numbers[i + step, j], numbers[i + step, j + step], numbers[i, j + step]]
                if step == 2:
                    k += [numbers[i + 1, j], numbers[i + 2, j + 1], numbers[i + 1, j + 2], numbers[i, j + 1]]
                self.elements.append((self.element, k))
                row.append(self.element)
                self.element += 1
            self.rows.append(row)
        self.columns = [[numbers[i, j] for j in range(len(levels)) if (i, j) in numbers] for i in range(len(stations))]
        self.numbers = numbers
        return self


def between(points):
    """The points with one more half-way between each two."""
    found = [points[0]]
    for a, b in zip(points, points[1:]):
        found += [(a + b) / 2, b]
    return found


def even(start, end, size):
    count = max(1, round((end - start) / size))
    return [start + (end - start) * i / count for i in range(count + 1)]


def panel_part(form, sheet, mesh):
    """The panel, flat before the pull. Also the stations of its mid line."""
    spans = form.spans()
    hand = sum(spans[:-1]) + form.lever
    fine = min(0.8 * hand, sum(spans) + 4 * mesh.along)
    stations = even(-TAIL, 0, 1.0) + even(0, fine, mesh.along)[1:]
    size, start, lengths = mesh.along, stations[-1], []
    while sum(lengths) < hand - start:
        size = min(size * 1.15, 3 * mesh.along)
        lengths.append(size)
    scale = (hand - start) / sum(lengths)
    for length in lengths:
        stations.append(stations[-1] + length * scale)
    gripped = len(stations) - 1
    stations = stations + even(hand, hand + BEYOND, 1.0)[1:]
    levels = between([sheet.thickness * (i / mesh.layers - 0.5) for i in range(mesh.layers + 1)])
    part = Part(1, 1, True).build(between(stations), levels, lambda s, v: (s, v))
    part.clamped = part.columns[2 * stations.index(0.0)]
    part.mid = [part.numbers[i, mesh.layers] for i in range(0, 2 * len(stations) - 1) if (i, mesh.layers) in part.numbers]
    part.inner = [row[-1] for row in part.rows]
    part.hand = part.numbers[2 * gripped, mesh.layers]
    return part


def contour(form, sheet, face, coarse, exit_length):
    """Stations along the form's contact side: place, heading, and whether the element that starts there can be touched."""
    path, heading = [], 0.0
    centres, chords, radius = form.centres(), form.chords(), form.fold_radius
    for j, angle in enumerate(form.angles):
        cx, cy = centres[j]
        count = max(2, round(radius * angle / face))
        for i in range(count):
            turn = heading + angle * i / count
            path.append((cx + radius * math.sin(turn), cy - radius * math.cos(turn), turn, j > 0))
        heading += angle
        length = chords[j] if j < len(form.angles) - 1 else exit_length
        x, y = cx + radius * math.sin(heading), cy - radius * math.cos(heading)
        last = j == len(form.angles) - 1
        flat = min(FLAT, length / 3)
        stops = even(0, flat, 2 * face) + even(flat, length - flat, coarse)[1:] + even(length - flat, length, 2 * face)[1:]
        for s in stops[:-1]:
            near = (s < flat - 1e-9 and j > 0) or (s >= length - flat - 1e-9 and not last)
            path.append((x + s * math.cos(heading), y + s * math.sin(heading), heading, near))
    path.append((x + length * math.cos(heading), y + length * math.sin(heading), heading, False))
    return path


def soft_form(form, sheet, mesh, first_node, first_element):
    """The form's own sheet, two elements thick, clamped at the first tangent point; its faces at the folds can be touched."""
    path = contour(form, sheet, mesh.face, 2.0, form.chords()[-1] + 4)
    stations = [path[0]]
    for a, b in zip(path, path[1:]):
        stations += [halfway(a, b, form), b]
    depth = sheet.thickness
    part = Part(first_node, first_element, True).build(
        stations, [depth * i / 4 for i in range(5)],
        lambda s, v: (s[0] - v * math.sin(s[2]), s[1] + v * math.cos(s[2])))
    part.fixed = part.columns[0]
    part.touched = [row[0] for row, start in zip(part.rows, path) if start[3]]
    # Two nodes at the lead-out's end tell how it turned and moved; one near each fold tells where that fold went.
    part.follow = [part.columns[-1][0], part.columns[-1][-1]]
    return part


def halfway(a, b, form):
    turn = (a[2] + b[2]) / 2
    x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    if b[2] > a[2] + 1e-9:
        rise = form.fold_radius * (1 - math.cos((b[2] - a[2]) / 2))
        x, y = x + rise * math.sin(turn), y - rise * math.cos(turn)
    return (x, y, turn, a[3])


def hard_form(form, mesh, first_node, first_element):
    """Rigid arcs at the folds but the first, which the clamp holds."""
    parts, heading = [], form.angles[0]
    for j in range(1, len(form.angles)):
        cx, cy = form.centres()[j]
        angle, radius = form.angles[j], form.fold_radius
        count = max(2, round(radius * angle / mesh.face))
        path = []
        for s in even(-FLAT, 0, 2 * mesh.face)[:-1]:
            x, y = cx + radius * math.sin(heading), cy - radius * math.cos(heading)
            path.append((x + s * math.cos(heading), y + s * math.sin(heading), heading))
        for i in range(count + 1):
            turn = heading + angle * i / count
            path.append((cx + radius * math.sin(turn), cy - radius * math.cos(turn), turn))
        heading += angle
        x, y, _ = path[-1]
        for s in even(0, FLAT, 2 * mesh.face)[1:]:
            path.append((x + s * math.cos(heading), y + s * math.sin(heading), heading))
        part = Part(first_node, first_element, False).build(
            path, [0.0, min(0.5, radius / 2)], lambda s, v: (s[0] - v * math.sin(s[2]), s[1] + v * math.cos(s[2])))
        first_node, first_element = part.nodes[-1][0] + 1, part.element
        part.fixed = [n[0] for n in part.nodes]
        part.touched = [row[0] for row in part.rows]
        parts.append(part)
    return parts


def write(path, form, panel, mesh, pull, backing=None, release=None):
    """Writes the deck and returns the panel. Without a backing sheet the form is rigid.

    The pull lists time, force per width and its direction, which is that of the sheet's end: a force that is given its direction converges
    where one that follows the mesh does not, once the bend gathers at a fold. The release lists the same down to no force.
    """
    part = panel_part(form, panel, mesh)
    next_node, next_element = part.nodes[-1][0] + 1, part.element
    forms = [soft_form(form, backing, mesh, next_node, next_element)] if backing else hard_form(form, mesh, next_node, next_element)
    out = []
    say = out.append
    for p in [part] + forms:
        say("*NODE, NSET=ALL")
        out.extend(f"{n},{x:.9f},{y:.9f},0." for n, x, y in p.nodes)
    elements(out, "CPE8R", "PANEL", [part])
    elements(out, "CPE8R" if backing else "CPE4", "FORM", forms)
    names(out, "*NSET, NSET=CLAMP", part.clamped)
    names(out, "*NSET, NSET=TOLD", part.mid + (forms[0].follow if backing else []))
    names(out, "*NSET, NSET=HELD", [n for p in forms for n in p.fixed])
    say("*SURFACE, NAME=INNER")
    out.extend(f"{e},S3" for e in part.inner)
    say("*SURFACE, NAME=FOLDS")
    out.extend(f"{e},S1" for p in forms for e in p.touched)
    say(f"*MATERIAL, NAME=PANEL\n*ELASTIC\n{panel.modulus},{panel.poisson}\n*PLASTIC")
    out.extend(f"{panel.strength * (panel.prestrain + e) ** panel.hardening:.6f},{e:.8f}" for e in strains(panel))
    stiff = backing or Sheet(205000, 0.29, 2)
    say(f"*MATERIAL, NAME=FORM\n*ELASTIC\n{stiff.modulus},{stiff.poisson}")
    say("*SOLID SECTION, ELSET=PANEL, MATERIAL=PANEL\n1.")
    say("*SOLID SECTION, ELSET=FORM, MATERIAL=FORM\n1.")
    say(f"*SURFACE INTERACTION, NAME=PRESS\n*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR\n{mesh.penalty:g}")
    say("*CONTACT PAIR, INTERACTION=PRESS, TYPE=SURFACE TO SURFACE\nINNER,FOLDS")
    say("*BOUNDARY\nCLAMP,1,2\nHELD,1,2")
    # One step for both: at the beginning of another no contact is found, and the panel flies off.
    load = pull + [(1 + RELEASE * t, f, a) for t, f, a in release[1:]] if release else pull
    for name, share in (("ACROSS", lambda f, a: -f * math.sin(a)), ("UP", lambda f, a: f * math.cos(a))):
        say(f"*AMPLITUDE, NAME={name}")
        out.extend(f"{t:.9f},{share(f, a):.9f}" for t, f, a in load)
    say(f"*STEP, NLGEOM, INC=5000\n*STATIC\n{mesh.step:g},{load[-1][0]:g},1e-6,{mesh.step:g}")
    say(f"*CLOAD, AMPLITUDE=ACROSS\n{part.hand},1,1.\n*CLOAD, AMPLITUDE=UP\n{part.hand},2,1.")
    say("*NODE PRINT, NSET=TOLD, FREQUENCY=1\nU\n*EL PRINT, ELSET=PANEL, FREQUENCY=1\nS\n*END STEP")
    with open(path, "w", encoding="ascii") as file:
        file.write("\n".join(out) + "\n")
    part.follow = forms[0].follow if backing else []
    part.places = {n: (x, y) for p in [part] + forms for n, x, y in p.nodes}
    return part


def strains(panel):
    """Plastic strains at which the flow curve is tabulated: closer at first, where it turns."""
    first = panel.prestrain / 20
    count = 70
    return [0.0] + [first * (0.6 / first) ** (i / count) for i in range(count + 1)]


def elements(out, kind, name, parts):
    out.append(f"*ELEMENT, TYPE={kind}, ELSET={name}")
    for part in parts:
        out.extend(f"{number}," + ",".join(map(str, nodes)) for number, nodes in part.elements)


def names(out, head, numbers):
    out.append(head)
    out.extend(",".join(map(str, numbers[i:i + 12])) for i in range(0, len(numbers), 12))
