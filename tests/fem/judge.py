"""Judges a plan by finite elements: the panel is pulled over the form and let go, and what comes off is printed beside the prediction."""
import argparse
import json
import math
import os
import subprocess
import sys
import time
import urllib.error
import urllib.request

import deck
import geometry
import pull
import reading


def post(service, path, body=None):
    data = None if body is None else json.dumps(body).encode()
    request = urllib.request.Request(service + path, data, {"Content-Type": "application/json"} if data else {})
    try:
        with urllib.request.urlopen(request, timeout=60) as answer:
            return json.load(answer)
    except urllib.error.HTTPError as refusal:
        raise SystemExit(f"{path}: {refusal.code} {refusal.read().decode()}") from refusal


def sheet_of(service, request, thickness, flow=None):
    """Modulus and Poisson's ratio of a material in a request, its own values first, and the flow curve that the plan used."""
    material = request["material"]
    known = post(service, "/v1/materials/" + material["id"]) if "id" in material else {}

    def value(name):
        given = material.get(name)
        return given if given is not None else known[name]["value"]

    curve = (flow["strengthCoefficient"], flow["prestrain"], flow["strainHardening"]) if flow else ()
    return deck.Sheet(value("youngsModulus"), value("poissonRatio"), thickness, *curve)


def job_of(service, request):
    """Form, panel, form sheet (None where ribs keep it from bending) and the prediction. A request with stations is a standing form."""
    if request.get("units", "mm") != "mm":
        raise SystemExit("give the request in mm")
    standing = request.get("stations")
    plan = post(service, "/v1/forms", {k: v for k, v in request.items() if k not in ("stations", "ends")})
    if standing:
        ask = {k: v for k, v in request.items() if k != "brake"}
    else:
        standing = plan["form"]["stations"]
        ask = {**{k: v for k, v in request.items() if k in ("units", "panel", "form")},
               "stations": [{"angle": s["angle"], "facetAfter": s["facetAfter"]} for s in standing],
               "ends": plan["request"]["form"]["stepping"]["ends"]}
        ask["panel"] = {**ask["panel"], "lever": plan["panel"]["pull"]["lever"]}
    prediction = post(service, "/v1/forms/prediction", ask)
    if not prediction["wraps"]:
        raise SystemExit("the prediction cannot follow this pull: " + str(prediction["text"]))
    if prediction["clampGap"]:
        raise SystemExit("the deck clamps the panel at the first fold; this job clamps behind it")
    whole = plan["request"]
    panel = sheet_of(service, request["panel"], plan["panel"]["thickness"], plan["panel"]["springback"]["flowCurve"])
    backing = sheet_of(service, request["form"], plan["form"]["thickness"])
    form = geometry.Form(
        [math.radians(s["angle"]) for s in standing], [s["facetAfter"] for s in standing[:-1]],
        whole["form"]["foldRadius"] + backing.thickness, panel.thickness, prediction["lever"])
    return form, panel, None if whole["form"]["backing"] == "ribs" else backing, prediction, whole["panel"]["width"]


class Run:
    """One deck, written, run and watched."""

    def __init__(self, name, form, panel, mesh, load, backing, release=None):
        self.name, self.form, self.load, self.release = name, form, load, release
        for end in (".dat", ".sta", ".cvg", ".frd"):
            if os.path.exists(name + end):
                os.remove(name + end)
        self.part = deck.write(name + ".inp", form, panel, mesh, load, backing, release)
        self.reader = reading.Reader(name + ".dat", self.part, form, load, release)

    def go(self, seconds, until=None):
        """Runs until it ends, the last frame satisfies a condition, or the time is up. Returns the frames and the seconds taken."""
        began = time.monotonic()
        with open(self.name + ".log", "w", encoding="ascii") as log:
            process = subprocess.Popen(["ccx", os.path.basename(self.name)], cwd=os.path.dirname(self.name), stdout=log, stderr=log,
                                       env={**os.environ, "OMP_NUM_THREADS": "1"})
            while process.poll() is None and time.monotonic() - began < seconds:
                time.sleep(3)
                if until:
                    found = self.reader.look()
                    if found and until(found[-1]):
                        break
            if process.poll() is None:
                process.terminate()
            process.wait()
        return self.reader.look(), time.monotonic() - began


def describe(mesh, backing):
    return (f"{mesh.layers} elements through the panel, {mesh.along:g} mm along, fold faces {mesh.face:g} mm, penalty {mesh.penalty:g} N/mm3, "
            f"steps of {100 * mesh.step:g} % of the pull, {'bare form' if backing else 'rigid form'}")


def main():
    args = argparse.ArgumentParser(description=__doc__)
    args.add_argument("request")
    args.add_argument("--service", required=True)
    args.add_argument("--work", required=True)
    args.add_argument("--coarse", action="store_true", help="4 elements through the panel, 2 mm along: radius, sweep and force only")
    args.add_argument("--seconds", type=float, default=900, help="longest time of a run")
    args.add_argument("--again", type=int, default=0, help="so many more first runs, each directed by the end angles of the one before")
    args.add_argument("--beyond", type=float, default=0.06, help="how far past the predicted force the first run goes")
    given = args.parse_args()
    with open(given.request, encoding="utf-8") as file:
        request = json.load(file)
    form, panel, backing, prediction, width = job_of(given.service, request)
    penalty = 1e3
    coarse = deck.Mesh(4, 2.0, 0.05, penalty, 0.005)
    mesh = coarse if given.coarse else deck.Mesh(6, 1.1, 0.05, penalty, 0.005)
    touches = [(s["force"] / width, math.radians(s["endAngle"])) for s in prediction["pull"]["steps"]]
    name = os.path.join(given.work, os.path.splitext(os.path.basename(given.request))[0])
    print(f"{os.path.basename(given.request)}: {len(form.angles)} folds, lever {form.lever:.1f} mm, panel {panel.thickness:g} mm")

    # First run: coarse, past the predicted end, to find the forces and end angles of the touches. Where the force was far off the square, it
    # is repeated with the direction that it found.
    path = pull.path(form, panel, touches, given.beyond)
    for turn in range(given.again + 1):
        first = Run(f"{name}-first-{turn}", form, panel, coarse, path, backing)
        found, took = first.go(given.seconds, lambda f: reading.gap(f, form, len(form.angles)) <= 0)
        print(f"first run{f', {turn} again' if turn else ''}: {describe(coarse, backing)}; {len(found)} increments; {took:.0f} s", flush=True)
        met = [reading.touch(found, form, place, 0 if place == len(form.angles) else 0.01) for place in range(1, len(form.angles) + 1)]
        if met[-1] is None:
            print(f"STOPPED: the first run did not complete the wrap; it came to {found[-1].force / touches[-1][0]:.3f} of the predicted force"
                  if found else "STOPPED: the first run did not begin; see its log")
            return 1
        pulled = reading.completed(found, form)
        top = pulled[-1]
        loose = reading.let_go(top, first.part, bending(panel))
        report(form, first.part, prediction, touches, pulled, [("elastic", top, loose)], backing)
        path = pull.along(pulled, given.beyond)
    if None in met:
        print(f"STOPPED: fold {met.index(None) + 2} was not touched before the wrap was complete, so the second run has no path")
        return 1

    # Second run: up to that force, directed as the first run's end was, and down again.
    load = pull.along(pulled)
    second = Run(name, form, panel, mesh, load, backing, pull.let_go(load, loose.angle))
    found, took = second.go(given.seconds)
    pulled = [f for f in found if not f.released]
    let_go = [f for f in found if f.released]
    print(f"second run: {describe(mesh, backing)}; {len(found)} increments; {took:.0f} s")
    if not pulled:
        print("STOPPED: the second run did not begin; see its log")
        return 1
    top, stiffness = pulled[-1], bending(panel)
    ways = [("elastic", top, reading.let_go(top, second.part, stiffness))]
    if let_go:
        ways.append(("in contact", top, reading.let_go(let_go[-1], second.part, stiffness)))
    report(form, second.part, prediction, touches, pulled, ways, backing)
    if top.time < 1 - 1e-6:
        print(f"STOPPED: the second run came to {top.time:.3f} of the pull; the figures above are from there")
        return 1
    left = let_go[-1].force / top.force if let_go else 1
    if left > 0.2:
        print(f"STOPPED: the release in contact stopped with {left:.3f} of the force left; the rest was taken off elastically")
        return 1
    print(f"  release in contact: {left:.3f} of the force was left for the elastic end")
    return 0


def bending(panel):
    """Bending stiffness of the sheet for each width [N mm]."""
    return panel.modulus / (1 - panel.poisson ** 2) * panel.thickness ** 3 / 12


def report(form, part, prediction, touches, pulled, ways, backing):
    """Prints each way to let the panel go beside the prediction: its name, the top of the pull and the panel let go."""
    top = pulled[-1]
    freed = [reading.released(loose, end, form, part) for _, end, loose in ways]

    def line(what, found, predicted, digits, unit):
        share = f"{100 * (predicted / found[-1] - 1):+.1f} %" if found[-1] else ""
        print(f"  {what:<34}" + "".join(f"{value:>12.{digits}f}" for value in found) + f"{predicted:>12.{digits}f}  {share:>8}  {unit}")

    print(f"  {'let go:':<34}" + "".join(f"{name:>12}" for name, _, _ in ways) + f"{'predicted':>12}")
    first, to = form.middle()
    line(f"radius, folds {first + 1}-{to + 1}, mid surface", [f[1] for f in freed], prediction["radius"] + mid(prediction, form), 2, "mm")
    line("sweep", [math.degrees(f[0]) for f in freed], prediction["sweep"], 2, "deg")
    for facet, predicted in enumerate(prediction["facets"]):
        line(f"ripple of facet {facet + 1}", [f[2][facet] for f in freed], predicted["ripple"], 4, "mm")
    line("force at the end", [top.force], touches[-1][0], 4, "N/mm")
    line("end angle there", [math.degrees(top.angle)], math.degrees(touches[-1][1]), 1, "deg")
    if backing:
        line("turn of the form's end", [math.degrees(top.turn)], prediction["give"]["rotation"], 2, "deg")
    else:
        for fold in range(1, len(form.angles)):
            met = reading.touch(pulled, form, fold)
            if met:
                line(f"touch of fold {fold + 1}: force", [met[0]], touches[fold - 1][0], 4, "N/mm")
                line("                 end angle", [math.degrees(met[1])], math.degrees(touches[fold - 1][1]), 1, "deg")
            else:
                print(f"  fold {fold + 1} was not touched")
    off = [abs(math.degrees(f.angle - f.direction)) for f in pulled]
    print(f"  force off the square to the sheet's end: at most {max(off):.1f} deg on the way, {off[-1]:.2f} deg at the end")
    print(f"  gap to the lead-out at the end of the pull {reading.gap(top, form, len(form.angles)):+.3f} mm", flush=True)


def mid(prediction, form):
    """The service gives a radius where the caller measures it, the elements that of the mid surface."""
    side = prediction["request"]["panel"]["surface"]
    return {"inside": 0.5, "mid": 0.0, "outside": -0.5}[side] * form.panel


if __name__ == "__main__":
    sys.exit(main())
