"""Writes nests of sleeve outlines as other hands would draw them, with what a tape would measure on them.

usage: other_hands.py FOLDER FIRST COUNT

Its arithmetic is its own: caps of two tangent arcs or of one Bezier curve to a half, side seams straight, hem straight or bowed. ezdxf writes the files. Every case
has a seed, its number. cases.tsv tells what was drawn: number, kind, size that is at fault ("-" where none), unit to be given with the file ("-" where the drawing
states it), how it was drawn, files. figures.tsv tells the figures drawn: case, size, measure, millimetres.
"""

import math
import os
import random
import sys

import ezdxf

CLEAN = "clean"
FAULTS = [
    "lost-unit", "other-unit", "exchanged-sizes", "bicep-off", "wrist-off", "length-off", "cap-height-off", "wavy-cap", "moved-vertex",
    "mirrored-size", "missing-size", "open-outline", "stretched-size", "two-of-a-size", "no-axis", "no-unit",
]
LABELS = ["36", "38", "40", "42", "44", "46"]


class Sleeve:
    """Figures of one size, mm."""

    def __init__(self, front, back, height, depth, wrist, bow, style, tilt=0.0):
        self.front, self.back, self.height, self.depth, self.wrist, self.bow, self.style = front, back, height, depth, wrist, bow, style
        self.tilt = tilt

    def figures(self):
        lengths = [cap_length(w, self.height, self.style) for w in (self.front, self.back)]
        drop = self.bow_at(0.0)
        return {
            "bicep": self.front + self.back,
            "capHeight": self.height,
            "capLine": sum(lengths),
            "frontCapLine": lengths[0],
            "backCapLine": lengths[1],
            "wrist": self.wrist,
            "length": self.height + self.depth + drop,
        }

    def hem(self):
        skew = (self.front - self.back) / 2
        return -self.wrist / 2 - skew, self.wrist / 2 - skew

    def bow_at(self, x):
        if self.bow == 0:
            return 0.0
        left, right = self.hem()
        half = (right - left) / 2
        radius = (half * half + self.bow * self.bow) / (2 * self.bow)
        off = x - (left + right) / 2
        return math.sqrt(radius * radius - off * off) - (radius - self.bow)


def cap_length(width, height, style):
    if style[0] == "arcs":
        return (width * width + height * height) / (2 * height) * 2 * math.atan2(height, width)
    a, b = style[1], style[2]
    steps = 4000
    total = 0.0
    last = bezier(width, height, a, b, 0)
    for i in range(1, steps + 1):
        here = bezier(width, height, a, b, i / steps)
        total += math.dist(last, here)
        last = here
    return total


def bezier(width, height, a, b, t):
    """A half of a cap, from the apex outward to the right."""
    s = 1 - t
    x = 3 * s * s * t * a * width + 3 * s * t * t * (1 - b) * width + t * t * t * width
    y = height * (s * s * s + 3 * s * s * t)
    return x, y


class Path:
    """A stretch of outline: a straight line, an arc by its bulge, or a Bezier curve."""

    def __init__(self, kind, points, bulge=0.0):
        self.kind, self.points, self.bulge = kind, points, bulge

    def start(self):
        return self.points[0]

    def end(self):
        return self.points[-1]


def outline(sleeve, half, wave=None):
    """The outline from the left underarm point over the apex, counter-clockwise as y goes up: a list of paths, clockwise."""
    paths = []
    left, right = sleeve.hem()
    height = sleeve.height
    if sleeve.style[0] == "arcs":
        share_front, share_back = sleeve.style[1], sleeve.style[2]
        for sign, width, share in ((-1, sleeve.front, share_front), (1, sleeve.back, share_back)):
            if half and sign < 0:
                continue
            joint = (sign * width * share, height * (1 - share))
            turn = math.tan(2 * math.atan2(height, width) / 4)
            if sign < 0:
                paths.append(Path("arc", [(-width, 0.0), joint], turn))
                paths.append(Path("arc", [joint, (0.0, height)], -turn))
            else:
                paths.append(Path("arc", [(0.0, height), joint], -turn))
                paths.append(Path("arc", [joint, (width, 0.0)], turn))
    else:
        a, b = sleeve.style[1], sleeve.style[2]
        if not half:
            w = sleeve.front
            paths.append(Path("bezier", [(-w, 0.0), (-w + b * w, 0.0), (-a * w, height), (0.0, height)]))
        w = sleeve.back
        paths.append(Path("bezier", [(0.0, height), (a * w, height), (w - b * w, 0.0), (w, 0.0)]))
    low = -sleeve.depth
    turn = 0.0
    if sleeve.bow:
        turn = 2 * sleeve.bow / (right - left)
    paths.append(Path("line", [(sleeve.back, 0.0), (right, low + sleeve.tilt)]))
    if half:
        if sleeve.bow:
            radius = ((right - left) ** 2 / 4 + sleeve.bow ** 2) / (2 * sleeve.bow)
            angle = math.asin(right / radius)
            paths.append(Path("arc", [(right, low), (0.0, low - sleeve.bow)], -math.tan(angle / 4)))
        else:
            paths.append(Path("line", [(right, low), (0.0, low)]))
        paths.append(Path("line", [(0.0, low - sleeve.bow), (0.0, height)]))
    else:
        paths.append(Path("arc" if turn else "line", [(right, low + sleeve.tilt), (left, low)], -turn))
        paths.append(Path("line", [(left, low), (-sleeve.front, 0.0)]))
    return paths


def sampled(path, step):
    """Vertices along a path, its last one left out."""
    if path.kind == "line":
        return [path.points[0]]
    if path.kind == "arc":
        return arc_points(path.points[0], path.points[1], path.bulge, step)[:-1]
    p = path.points
    length = sum(math.dist(p[i], p[i + 1]) for i in range(3))
    n = max(4, int(length / step))
    out = []
    for i in range(n):
        t = i / n
        s = 1 - t
        out.append(tuple(
            s ** 3 * p[0][k] + 3 * s * s * t * p[1][k] + 3 * s * t * t * p[2][k] + t ** 3 * p[3][k] for k in (0, 1)))
    return out


def arc_points(a, b, bulge, step):
    if abs(bulge) < 1e-12:
        return [a, b]
    sweep = 4 * math.atan(bulge)
    chord = math.dist(a, b)
    radius = chord / (2 * math.sin(abs(sweep) / 2))
    n = max(3, int(radius * abs(sweep) / step))
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    far = radius * math.cos(sweep / 2) * (1 if sweep > 0 else -1)
    nx, ny = -(b[1] - a[1]) / chord, (b[0] - a[0]) / chord
    centre = (middle[0] + nx * far, middle[1] + ny * far)
    first = math.atan2(a[1] - centre[1], a[0] - centre[0])
    return [a] + [
        (centre[0] + radius * math.cos(first + sweep * i / n), centre[1] + radius * math.sin(first + sweep * i / n))
        for i in range(1, n)] + [b]


class Frame:
    """Where a piece lies on the sheet: mirrored, turned, shifted, in units of the drawing."""

    def __init__(self, degrees, mirrored, x, y, unit):
        self.degrees, self.mirrored, self.x, self.y, self.unit = degrees, mirrored, x, y, unit

    def at(self, p):
        c, s = math.cos(math.radians(self.degrees)), math.sin(math.radians(self.degrees))
        x = -p[0] if self.mirrored else p[0]
        return ((c * x - s * p[1] + self.x) / self.unit, (s * x + c * p[1] + self.y) / self.unit)


def draw(target, paths, frame, how, rng, attribs, twice):
    """Writes an outline; how is the kind of entity."""
    sign = -1 if frame.mirrored else 1
    place = frame.at
    if how in ("lwpolyline", "polyline", "bulges", "lwbulges"):
        vertices = []
        for path in paths:
            if how in ("bulges", "lwbulges") and path.kind != "bezier":
                vertices.append((*place(path.start()), sign * path.bulge))
            else:
                vertices += [(*place(p), 0.0) for p in sampled(path, rng.uniform(2.5, 4))]
        if twice:
            for i in sorted(rng.sample(range(len(vertices)), 3), reverse=True):
                vertices.insert(i, (vertices[i][0], vertices[i][1], 0.0))
            if rng.random() < 0.5:
                vertices.append((vertices[0][0], vertices[0][1], 0.0))
        if how.startswith("lw"):
            target.add_lwpolyline(vertices, format="xyb", close=True, dxfattribs=attribs)
        else:
            line = target.add_polyline2d([v[:2] for v in vertices], close=True, dxfattribs=attribs)
            for vertex, v in zip(line.vertices, vertices):
                if v[2]:
                    vertex.dxf.bulge = v[2]
        return
    if how == "fit":
        curved = [p for p in paths if p.kind == "bezier"]
        points = [q for p in curved for q in sampled(p, 9)] + [curved[-1].end()]
        target.add_spline([(*place(p), 0) for p in points], degree=3, dxfattribs=attribs)
    for number, path in enumerate(paths):
        if how == "fit" and path.kind == "bezier":
            continue
        gap = rng.uniform(0.1, 0.6) if how == "gaps" and number % 2 == 0 else 0.0
        if path.kind == "line":
            a, b = path.points
            b = shortened(a, b, gap)
            target.add_line(place(a), place(b), dxfattribs=attribs)
            if twice and number % 2 == 0:
                target.add_line(place(b), place(a), dxfattribs=attribs)
        elif path.kind == "arc" and how in ("arcs", "gaps"):
            a, b = place(path.start()), place(path.end())
            bulge = sign * path.bulge
            if bulge < 0:
                a, b, bulge = b, a, -bulge
            sweep = 4 * math.atan(bulge)
            chord = math.dist(a, b)
            radius = chord / (2 * math.sin(sweep / 2))
            far = radius * math.cos(sweep / 2)
            centre = ((a[0] + b[0]) / 2 - (b[1] - a[1]) / chord * far, (a[1] + b[1]) / 2 + (b[0] - a[0]) / chord * far)
            target.add_arc(
                centre, radius, math.degrees(math.atan2(a[1] - centre[1], a[0] - centre[0])),
                math.degrees(math.atan2(b[1] - centre[1], b[0] - centre[0])), dxfattribs=attribs)
        elif path.kind == "bezier" and how == "control":
            spline = target.add_spline(degree=3, dxfattribs=attribs)
            spline.control_points = [(*place(p), 0) for p in path.points]
            spline.knots = [0, 0, 0, 0, 1, 1, 1, 1]
        else:
            points = sampled(path, rng.uniform(2.5, 4)) + [path.end()]
            for a, b in zip(points, points[1:]):
                target.add_line(place(a), place(b), dxfattribs=attribs)


def shortened(a, b, gap):
    length = math.dist(a, b)
    return (b[0] + (a[0] - b[0]) * gap / length, b[1] + (a[1] - b[1]) * gap / length)


def run(rng, count):
    """An even grade, front and back apart, in a style."""
    style = ("arcs", rng.uniform(0.42, 0.58), rng.uniform(0.42, 0.58)) if rng.random() < 0.5 else ("bezier", rng.uniform(0.45, 0.6), rng.uniform(0.35, 0.55))
    front, back = rng.uniform(150, 175), 0.0
    back = front + rng.choice([0.0, rng.uniform(4, 12)])
    height = rng.uniform(115, 140)
    depth = rng.uniform(200, 470)
    wrist = (front + back) * rng.uniform(0.55, 0.85)
    bow = rng.choice([0.0, 0.0, rng.uniform(4, 9)])
    growth = (rng.uniform(5, 7), rng.uniform(3, 5), rng.uniform(2, 6), rng.uniform(4, 6))
    sizes = []
    for i in range(count):
        sizes.append(Sleeve(
            front + i * growth[0], back + i * growth[0], height + i * growth[1], depth + i * growth[2], wrist + i * growth[3], bow, style))
    return sizes


def wavy(paths, amplitude, waves):
    """The cap as a polyline that swings about its line."""
    cap = [p for p in paths if p.kind != "line"][:4 if paths[0].kind == "arc" else 2]
    points = []
    for path in cap:
        points += sampled(path, 3)
    points.append(cap[-1].end())
    n = len(points) - 1
    out = []
    for i, p in enumerate(points):
        before, after = points[max(0, i - 1)], points[min(n, i + 1)]
        length = math.dist(before, after)
        normal = (-(after[1] - before[1]) / length, (after[0] - before[0]) / length)
        swing = amplitude * math.sin(2 * math.pi * waves * i / n) * min(1, 6 * i / n, 6 * (n - i) / n)
        out.append((p[0] + normal[0] * swing, p[1] + normal[1] * swing))
    return [Path("line", [a, b]) for a, b in zip(out, out[1:])] + paths[len(cap):]


def moved(paths, rng):
    """One vertex of the cap, away from apex and underarm, moved outward."""
    cap = [p for p in paths if p.kind != "line"][:4 if paths[0].kind == "arc" else 2]
    points = []
    for path in cap:
        points += sampled(path, 6)
    points.append(cap[-1].end())
    n = len(points) - 1
    i = rng.choice([k for k in range(n) if 0.15 < k / n < 0.35 or 0.65 < k / n < 0.85])
    before, after = points[i - 1], points[i + 1]
    length = math.dist(before, after)
    off = rng.uniform(7, 10)
    points[i] = (points[i][0] - (after[1] - before[1]) / length * off, points[i][1] + (after[0] - before[0]) / length * off)
    return [Path("line", [a, b]) for a, b in zip(points, points[1:])] + paths[len(cap):]


def case(folder, number, cases, figures):
    rng = random.Random(20261126 + number)
    kind = CLEAN if number % 5 < 2 else FAULTS[(number // 5 * 3 + number % 5 - 2) % len(FAULTS)]
    count = rng.choice([5, 6])
    sizes = run(rng, count)
    labels = LABELS[:count]
    style = sizes[0].style[0]
    unequal = abs(sizes[0].front - sizes[0].back) > 1
    how = rng.choice(
        ["lines", "lwpolyline", "polyline"] + (["arcs", "bulges", "lwbulges", "gaps"] if style == "arcs" else ["control", "fit"]))
    by = rng.choice(["layer", "layer", "block", "colour", "text", "file", "sheet"])
    half = not unequal and kind not in ("mirrored-size", "wavy-cap", "moved-vertex", "no-axis", "open-outline") and rng.random() < 0.35
    twice = how in ("lwpolyline", "polyline", "lines", "bulges") and rng.random() < 0.3
    unit = rng.choice([1.0, 1.0, 10.0, 25.4])
    degrees = rng.choice([0.0, rng.uniform(0, 360), rng.uniform(0, 360), 90.0, 33.0])
    mirrored = rng.random() < 0.2
    grain = rng.choice(["none", "GRAIN", "7", "own"])
    inner = rng.choice(["none", "bicep"])
    notches = rng.random() < 0.5
    stated = rng.choice(["header", "header", "text", "given"])
    at_fault = "-"
    victim = rng.randrange(count)
    inside = rng.randrange(1, count - 1)
    ends = rng.choice([0, count - 1])
    drawn = [None] * count

    if kind != CLEAN:
        at_fault = labels[victim]
    if kind == "lost-unit":
        victim, by = ends, rng.choice(["layer", "block", "file"])
    if kind == "other-unit":
        by = rng.choice(["layer", "block", "file"])
    if kind in ("exchanged-sizes", "missing-size", "open-outline"):
        victim = inside
        by = "layer" if by in ("colour",) else by
    if kind in ("bicep-off", "wrist-off", "length-off", "cap-height-off"):
        s = sizes[victim]
        sign = rng.choice([-1, 1])
        if kind == "bicep-off":
            s.front += sign * 2.5
            s.back += sign * 2.5
        if kind == "wrist-off":
            s.wrist += sign * 7
        if kind == "length-off":
            s.depth += sign * 9
        if kind == "cap-height-off":
            s.height += sign * 5
            s.depth -= sign * 5
    if kind == "stretched-size":
        s = sizes[victim]
        s.front, s.back, s.wrist = s.front * 1.1, s.back * 1.1, s.wrist * 1.1
    if kind == "mirrored-size":
        if not unequal:
            for s in sizes:
                s.back += 9
        how = how if how != "fit" else "control"
    if kind in ("wavy-cap", "moved-vertex"):
        how = rng.choice(["lwpolyline", "polyline", "lines"])
        twice = False
    if kind == "no-axis":
        grain = inner = "none"
        notches = False
        degrees = rng.uniform(5, 40)
        for s in sizes:
            s.bow = 0.0
            s.tilt = rng.uniform(18, 30)
            if abs(s.front - s.back) < 1:
                s.back += 8
    if kind == "no-unit":
        stated = "given"
    if kind == "two-of-a-size":
        by = rng.choice(["layer", "block"])
    at_fault = "-" if kind in (CLEAN, "no-axis", "no-unit") else labels[victim]
    other = -1
    order = list(range(count))
    if kind == "exchanged-sizes":
        other = victim + 1 if victim + 1 < count - 1 else victim - 1
        order[victim], order[other] = other, victim
        at_fault = labels[min(victim, other)] + "+" + labels[max(victim, other)]
    if by in ("text", "sheet", "block", "file") and rng.random() < 0.5:
        turns = [rng.uniform(0, 360) for _ in sizes]
    else:
        turns = [degrees] * count
    version = "R12" if how in ("polyline", "lines", "arcs", "bulges", "gaps") and rng.random() < 0.5 else rng.choice(["R2000", "R2010"])
    if version == "R12" and stated == "header":
        stated = "text"
    shift = (rng.uniform(-4000, 4000), rng.uniform(-4000, 4000))

    def new():
        doc = ezdxf.new(version)
        if stated == "header":
            doc.header["$INSUNITS"] = {1.0: 4, 10.0: 5, 25.4: 1}[unit]
        elif version != "R12":
            doc.header["$INSUNITS"] = 0
        return doc

    def layer(doc, name):
        if name not in doc.layers:
            doc.layers.new(name)
        return name

    docs = []
    doc = new()
    for i, s in enumerate(sizes):
        if kind == "missing-size" and i == victim:
            continue
        label = labels[order[i]]
        if by == "file" and (docs or i > 0) :
            docs.append(doc)
            doc = new()
        x, y = shift
        if by in ("text", "sheet", "block") :
            x += i * 1300
        size_unit = unit
        if kind == "lost-unit" and i == victim:
            size_unit = unit * 25.4
        if kind == "other-unit" and i == victim:
            size_unit = unit * rng.choice([2.54, 1 / 2.54, 1 / 10.0])
        turned = turns[i]
        mirror = mirrored != (kind == "mirrored-size" and i == victim)
        frame = Frame(turned, mirror, x, y, size_unit)
        attribs = {"layer": "0"}
        target = doc.modelspace()
        if by == "layer":
            attribs["layer"] = layer(doc, rng.choice(["", ""]) + label)
        elif by == "colour":
            attribs["layer"] = layer(doc, "OUTLINE")
            attribs["color"] = i + 1
        elif by == "block":
            if kind == "two-of-a-size" and False:
                pass
            target = doc.blocks.new("SLEEVE_" + label)
            attribs["layer"] = layer(doc, "CUT")
            frame = Frame(0.0, False, 0.0, 0.0, size_unit)
        else:
            attribs["layer"] = layer(doc, "SLEEVE")
        paths = outline(s, half)
        if kind == "wavy-cap" and i == victim:
            paths = wavy(paths, 2.5, 3)
        if kind == "moved-vertex" and i == victim:
            paths = moved(paths, rng)
        style_of_entity = how
        if kind == "open-outline" and i == victim:
            straight = [k for k, p in enumerate(paths) if p.kind == "line"]
            del paths[straight[0]]
            style_of_entity = {"lwpolyline": "lines", "polyline": "lines", "bulges": "arcs", "lwbulges": "arcs"}.get(how, how)
        draw(target, paths, frame, style_of_entity, rng, attribs, twice)
        if kind == "two-of-a-size" and i == victim:
            second = Sleeve(s.front + 3, s.back + 3, s.height - 2, s.depth - 15, s.wrist + 2, s.bow, s.style)
            away = Frame(frame.degrees, frame.mirrored, frame.x, frame.y + 2500, frame.unit)
            draw(target, outline(second, half), away, how, rng, attribs, False)
        if grain != "none":
            name = attribs["layer"] if grain == "own" else layer(doc, grain)
            a, b = (s.back * 0.4, s.height * 0.3), (s.back * 0.4, -s.depth * 0.6)
            if rng.random() < 0.5:
                a, b = b, a
            target.add_line(frame.at(a), frame.at(b), dxfattribs={**attribs, "layer": name})
        if inner == "bicep":
            target.add_line(frame.at((0.0 if half else -s.front, 0.0)), frame.at((s.back, 0.0)), dxfattribs=attribs)
        if notches:
            for depth in (s.depth * 0.4, s.depth * 0.6):
                left, right = s.hem()
                share = depth / s.depth
                p = (s.back + (right - s.back) * share, -depth)
                target.add_line(frame.at(p), frame.at((p[0] - 6, p[1])), dxfattribs={**attribs, "layer": layer(doc, "NOTCH")})
        size_text = {"layer": "0", "height": 8 / unit}
        if by == "colour":
            doc.modelspace().add_text(label, dxfattribs={**size_text, "color": i + 1}).set_pos(
                ((x + 900) / unit, (y + 30 * i) / unit))
        if by in ("text", "sheet", "file"):
            doc.modelspace().add_text("SIZE: " + label if by != "sheet" else "Size " + label, dxfattribs=size_text).set_pos(
                frame.at((s.back * 0.3, -s.depth * 0.3)))
        if by == "block":
            scale = -1 if mirror else 1
            doc.modelspace().add_blockref(
                "SLEEVE_" + label, (x / unit, y / unit), dxfattribs={"xscale": scale, "yscale": 1, "rotation": turned})
        for measure, value in s.figures().items():
            if kind in ("exchanged-sizes", "lost-unit", "other-unit", "mirrored-size") and i in (victim, other):
                continue
            if kind in ("wavy-cap", "moved-vertex") and i == victim and measure not in ("bicep", "wrist"):
                continue
            if kind in ("no-axis", "two-of-a-size", "open-outline") and (i == victim or kind == "no-axis"):
                continue
            if (mirror or mirrored) and measure in ("frontCapLine", "backCapLine"):
                measure = {"frontCapLine": "backCapLine", "backCapLine": "frontCapLine"}[measure]
            figures.append((number, label, measure, value))
    docs.append(doc)
    names = []
    for k, drawing in enumerate(docs):
        if stated == "text":
            words = {1.0: "UNITS: METRIC", 10.0: "UNITS: CM", 25.4: "UNITS: ENGLISH"}[unit]
            drawing.modelspace().add_text(words, dxfattribs={"height": 5 / unit}).set_pos((shift[0] / unit, (shift[1] - 900) / unit))
        names.append("case-%d-%d.dxf" % (number, k))
        drawing.saveas(os.path.join(folder, names[-1]))
    given = {1.0: "mm", 10.0: "cm", 25.4: "in"}[unit] if stated == "given" and kind != "no-unit" else "-"
    words = "%s by %s, turned by %.1f, %s%s, %s, grain %s, line %s" % (
        how, by, turns[0], "half " if half else "whole ", "mirrored" if mirrored else "", version, grain, inner)
    cases.append((number, kind, at_fault, given, words, ",".join(names)))


def main():
    folder, first, count = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    cases, figures = [], []
    for number in range(first, first + count):
        case(folder, number, cases, figures)
    with open(os.path.join(folder, "cases.tsv"), "w") as out:
        out.writelines("\t".join(map(str, row)) + "\n" for row in cases)
    with open(os.path.join(folder, "figures.tsv"), "w") as out:
        out.writelines("%d\t%s\t%s\t%.6f\n" % row for row in figures)


main()
