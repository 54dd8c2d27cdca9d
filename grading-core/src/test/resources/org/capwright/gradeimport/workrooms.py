"""Writes nests of sleeve outlines as workrooms hand them over: with notches cut in, seam allowances, frames, legends, other pieces, nested blocks.

usage: workrooms.py FOLDER FIRST COUNT

Caps are warped cosines, side seams are bowed, every outline is first a chain of points that is measured as a tape would. ezdxf writes the files. cases.tsv and
figures.tsv are as other_hands.py writes them.
"""

import math
import os
import random
import sys

import ezdxf

FAULTS = [
    "bicep-off", "wrist-off", "length-off", "cap-height-off", "moved-vertex", "moved-corner", "wavy-cap", "exchanged-sizes", "mirrored-size", "missing-size",
    "empty-size", "lost-unit", "other-unit", "false-header", "open-outline", "two-of-a-size", "no-unit", "no-axis", "no-size",
]
SCALES = [
    ["34", "36", "38", "40", "42", "44", "46"], ["XS", "S", "M", "L", "XL", "XXL"], ["EU 36", "EU 38", "EU 40", "EU 42", "EU 44"], ["8", "10", "12", "14", "16", "18"],
    ["36/38", "40/42", "44/46", "48/50", "52/54"], ["104", "110", "116", "122", "128", "134"],
]


def curve(width, height, power, cut, count):
    """A half of a cap from the apex outward: (0, height) to (width, 0)."""
    low = 0.5 * (1 + math.cos(math.pi * cut ** power))
    out = []
    for i in range(count + 1):
        u = cut * i / count
        y = (0.5 * (1 + math.cos(math.pi * u ** power)) - low) / (1 - low)
        out.append((width * u / cut, height * y))
    return out


def seam(a, b, bow, count):
    """A bowed side seam from a down to b, b included."""
    n = math.dist(a, b)
    nx, ny = (b[1] - a[1]) / n, -(b[0] - a[0]) / n
    out = []
    for i in range(1, count + 1):
        t = i / count
        s = bow * 4 * t * (1 - t)
        out.append((a[0] + (b[0] - a[0]) * t + nx * s, a[1] + (b[1] - a[1]) * t + ny * s))
    return out


def length(points):
    return sum(math.dist(a, b) for a, b in zip(points, points[1:]))


class Size:
    def __init__(self, front, back, height, depth, wrist):
        self.front, self.back, self.height, self.depth, self.wrist = front, back, height, depth, wrist

    def scaled(self, share):
        return Size(*(share * v for v in (self.front, self.back, self.height, self.depth, self.wrist)))


class Style:
    def __init__(self, rng):
        power = rng.uniform(0.95, 1.1)
        self.power = (power, power)
        self.cut = rng.choice([1.0, rng.uniform(0.9, 0.97)])
        self.bow = rng.choice([0.0, rng.uniform(-6, 6)])
        self.sag = rng.choice([0.0, rng.uniform(3, 9)])


class Chain:
    """The points of an outline and where its corners are: front underarm, apex, back underarm, back hem, front hem."""

    def __init__(self, size, style, step):
        n = max(12, int(max(size.front, size.back) * 1.3 / step))
        front = [(-x, y) for x, y in reversed(curve(size.front, size.height, style.power[0], style.cut, n))]
        back = curve(size.back, size.height, style.power[1], style.cut, n)
        self.cap = front + back[1:]
        share = size.front / (size.front + size.back)
        left, right = -size.wrist * share, size.wrist * (1 - share)
        m = 1 if style.bow == 0 else max(8, int(size.depth / step))
        self.down = seam((size.back, 0.0), (right, -size.depth), style.bow, m)
        k = 1 if style.sag == 0 else max(12, int(size.wrist / step))
        self.hem = seam((right, -size.depth), (left, -size.depth), -style.sag, k)
        self.up = seam((left, -size.depth), (-size.front, 0.0), style.bow, m)[:-1]
        self.size, self.style = size, style

    def ring(self):
        """Clockwise from the front underarm point."""
        return self.cap + self.down + self.hem + self.up

    def figures(self):
        apex = max(range(len(self.cap)), key=lambda i: self.cap[i][1])
        s = self.size
        whole = [self.down[-1]] + self.hem
        low = None
        for a, b in zip(whole, whole[1:]):
            if min(a[0], b[0]) <= 0 <= max(a[0], b[0]):
                low = a[1] + (b[1] - a[1]) * (0 - a[0]) / (b[0] - a[0])
        return {
            "bicep": s.front + s.back, "capHeight": s.height, "wrist": s.wrist, "length": s.height - low,
            "frontCapLine": length(self.cap[:apex + 1]), "backCapLine": length(self.cap[apex:]), "capLine": length(self.cap),
        }


def notched(ring, places, form):
    """Cuts notches into an outline at some of its vertices."""
    out = []
    for i, p in enumerate(ring):
        if i not in places:
            out.append(p)
            continue
        a, b = ring[i - 1], ring[(i + 1) % len(ring)]
        n = math.dist(a, b)
        t = ((b[0] - a[0]) / n, (b[1] - a[1]) / n)
        inward = (t[1], -t[0])
        half = min(2.0, 0.3 * n) if form != "slit" else 0.0
        tips = [(0.0, 5.0)] if form != "box" else [(-half, 5.0), (half, 5.0)]
        side = -1 if form == "peak" else 1
        out.append((p[0] - t[0] * half, p[1] - t[1] * half))
        out += [(p[0] + t[0] * x + side * inward[0] * y, p[1] + t[1] * x + side * inward[1] * y) for x, y in tips]
        out.append((p[0] + t[0] * half, p[1] + t[1] * half))
    return out


def allowed(ring, by):
    """The cut line: every edge moved out, corners mitred. Clockwise rings only."""
    lines = []
    for a, b in zip(ring, ring[1:] + ring[:1]):
        n = math.dist(a, b)
        o = (-(b[1] - a[1]) / n * by, (b[0] - a[0]) / n * by)
        lines.append(((a[0] + o[0], a[1] + o[1]), (b[0] + o[0], b[1] + o[1])))
    out = []
    for (a, b), (c, d) in zip(lines[-1:] + lines[:-1], lines):
        u, v = (b[0] - a[0], b[1] - a[1]), (d[0] - c[0], d[1] - c[1])
        cross = u[0] * v[1] - u[1] * v[0]
        if abs(cross) < 1e-4 * math.hypot(*u) * math.hypot(*v):
            out.append(b)
        else:
            t = ((c[0] - a[0]) * v[1] - (c[1] - a[1]) * v[0]) / cross
            out.append((a[0] + u[0] * t, a[1] + u[1] * t))
    return out


class Place:
    def __init__(self, degrees, mirrored, x, y, unit):
        self.c, self.s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        self.mirrored, self.x, self.y, self.unit = mirrored, x, y, unit

    def at(self, p):
        x = -p[0] if self.mirrored else p[0]
        return ((self.c * x - self.s * p[1] + self.x) / self.unit, (self.s * x + self.c * p[1] + self.y) / self.unit)


def draw(target, ring, place, how, attribs, rng):
    points = [place.at(p) for p in ring]
    turn = rng.randrange(len(points))
    points = points[turn:] + points[:turn]
    if rng.random() < 0.5:
        points.reverse()
    if rng.random() < 0.3:
        for _ in range(3):
            i = rng.randrange(len(points))
            points.insert(i, points[i])
    if how == "lw":
        target.add_lwpolyline(points, format="xy", close=True, dxfattribs=attribs)
    elif how == "lw-open":
        target.add_lwpolyline(points + points[:1], format="xy", close=False, dxfattribs=attribs)
    elif how == "poly":
        target.add_polyline2d(points, close=True, dxfattribs=attribs)
    elif how == "poly3d":
        target.add_polyline3d([(x, y, 0) for x, y in points], close=True, dxfattribs=attribs)
    elif how == "flipped":
        # Seen from behind: the extrusion points down, so x is negated in the entity's own system.
        target.add_lwpolyline([(-x, y) for x, y in points], format="xy", close=True, dxfattribs={**attribs, "extrusion": (0, 0, -1)})
    else:
        pairs = list(zip(points, points[1:] + points[:1]))
        rng.shuffle(pairs)
        for a, b in pairs:
            if math.dist(a, b) > 1e-9:
                target.add_line(a, b, dxfattribs=attribs)


def splines(target, chain, place, attribs, fit):
    """Every edge that bends is a spline, by its fit points or by its control points."""
    for edge in (chain.cap, [chain.cap[-1]] + chain.down, [chain.down[-1]] + chain.hem, [chain.hem[-1]] + chain.up + [chain.cap[0]]):
        points = [place.at(p) for p in edge]
        if len(points) == 2:
            target.add_line(points[0], points[1], dxfattribs=attribs)
        elif fit:
            target.add_spline([(x, y, 0) for x, y in points], degree=3, dxfattribs=attribs)
        else:
            target.add_spline_control_frame([(x, y, 0) for x, y in points], degree=3, dxfattribs=attribs)


LAYERS = ["%s", "SIZE_%s", "Gr. %s", "SLEEVE-%s", "Aermel_%s", "%s"]


def case(folder, number, cases, figures):
    rng = random.Random(70001 + 37 * number)
    kind = "clean" if number % 5 < 2 else FAULTS[(number // 5 * 3 + number % 5 - 2) % len(FAULTS)]
    labels = rng.choice(SCALES)
    count = min(len(labels), rng.choice([5, 6]))
    labels = labels[:count]
    style = Style(rng)
    child = labels[0] == "104"
    share = rng.uniform(0.62, 0.7) if child else rng.uniform(0.95, 1.3)
    front = rng.uniform(150, 170)
    base = Size(front, front + rng.choice([0.0, rng.uniform(5, 14)]), rng.uniform(95, 145), rng.uniform(150, 460), rng.uniform(200, 300)).scaled(share)
    grow = (rng.uniform(4, 7), rng.uniform(2.5, 5), rng.uniform(2, 6), rng.uniform(3.5, 6))
    broken = count == 6 and kind == "clean" and rng.random() < 0.3
    sizes = []
    for i in range(count):
        k = i + (0.3 * max(0, i - 3) if broken else 0)
        sizes.append(Size(
            base.front + grow[0] * k, base.back + grow[0] * k, base.height + grow[1] * k, base.depth + grow[2] * k, base.wrist + grow[3] * k))
    pattern = rng.choice(LAYERS)
    step = rng.choice([1.5, 3.0, 3.0, 6.0])
    how = rng.choice(["lw", "lw", "lw-open", "poly", "poly3d", "flipped", "lines", "lines", "spline-fit", "spline-control"])
    by = rng.choice(["layer", "layer", "layer", "block", "nested", "text", "mtext", "colour", "file"])
    unit = rng.choice([1.0, 1.0, 1.0, 10.0, 25.4])
    stated = rng.choice(["header", "header", "text", "given"])
    degrees = rng.choice([0.0, rng.uniform(0, 360), rng.uniform(0, 360), 180.0, 270.0])
    apart = by in ("text", "mtext", "file", "block", "nested") and rng.random() < 0.5
    mirrored = rng.random() < 0.2
    grain = rng.choice(["none", "GRAIN", "own", "arrows"])
    notch = rng.choice(["none", "none", "vee", "slit", "box", "peak"])
    cut = rng.choice(["none", "none", "none", "named", "same"])
    extras = [e for e in ("frame", "square", "cuff", "dimension", "legend", "inner") if rng.random() < 0.3]
    victim = rng.randrange(count)
    inside = rng.randrange(1, count - 1)
    other = -1
    if how.startswith("spline"):
        notch = cut = "none"
        step = 9.0 if how == "spline-fit" else 6.0
    if kind in ("exchanged-sizes", "missing-size", "open-outline"):
        victim = inside
    if kind in ("empty-size", "lost-unit"):
        victim = rng.choice([0, count - 1])
        by = rng.choice(["layer", "block"]) if kind == "empty-size" else rng.choice(["layer", "block", "file"])
    if kind in ("other-unit", "two-of-a-size"):
        by = rng.choice(["layer", "block"])
    apart = apart and by != "layer"
    if kind in ("moved-vertex", "wavy-cap", "open-outline", "moved-corner", "mirrored-size"):
        how = rng.choice(["lw", "poly", "lines"]) if kind != "open-outline" else "lines"
        notch, cut, step = "none", "none", rng.choice([2.0, 3.0, 5.0])
    if kind == "mirrored-size":
        for s in sizes:
            s.back += 10 if abs(s.back - s.front) < 1 else 0
    if kind == "no-axis":
        style.sag = style.bow = 0.0
        grain, degrees, apart, cut, extras, how = "none", rng.uniform(5, 40), False, "none", [], rng.choice(["lw", "poly", "lines"])
        style.power = (0.92, 1.12)
        for s in sizes:
            s.back += 9 if abs(s.back - s.front) < 1 else 0
    if kind == "no-size":
        by, apart = "layer", False
    if kind == "no-unit":
        stated = "given"
    if kind == "false-header":
        stated, unit = "header", 1.0
    if by in ("block", "nested") or by == "layer" and pattern.startswith("Aermel"):
        # A name ends with what all others do not share.
        labels = [label.replace("EU ", "") for label in labels]
    if by in ("layer", "block", "nested", "file"):
        labels = [label.replace("/", "-") for label in labels]
    s = sizes[victim]
    sign = rng.choice([-1, 1])
    if kind == "bicep-off":
        s.front += sign * 2.5
        s.back += sign * 2.5
    if kind == "wrist-off":
        s.wrist += sign * 8
    if kind == "length-off":
        s.depth += sign * 10
    if kind == "cap-height-off":
        s.height += sign * 6
        s.depth -= sign * 6
    order = list(range(count))
    if kind == "exchanged-sizes":
        other = victim + 1 if victim + 1 < count - 1 else victim - 1
        order[victim], order[other] = other, victim
    at_fault = "-" if kind in ("clean", "no-axis", "no-unit", "false-header", "no-size") else labels[victim]
    if kind == "exchanged-sizes":
        at_fault = labels[min(victim, other)] + "+" + labels[max(victim, other)]
    version = rng.choice(["R12", "R2000", "R2010", "R2018"]) if how in ("poly", "poly3d", "lines") and by != "mtext" else rng.choice(["R2000", "R2010", "R2018"])
    if version == "R12" and stated == "header":
        stated = "text"
    if kind == "false-header":
        version, stated = "R2010", "header"
    shift = (rng.uniform(-3000, 3000), rng.uniform(-3000, 3000))

    def new():
        doc = ezdxf.new(version)
        if version != "R12":
            doc.header["$INSUNITS"] = {1.0: 4, 10.0: 5, 25.4: 1}[unit] if stated == "header" else 0
            if kind == "false-header":
                doc.header["$INSUNITS"] = rng.choice([6, 1])
        return doc

    def layer(doc, name):
        if name not in doc.layers:
            doc.layers.new(name)
        return name

    doc = new()
    docs = [doc]
    boxes = []
    for i, s in enumerate(sizes):
        label = labels[order[i]]
        if kind == "missing-size" and i == victim:
            continue
        if by == "file" and i > 0:
            doc = new()
            docs.append(doc)
        size_unit = unit
        if kind == "lost-unit" and i == victim:
            size_unit = unit * 25.4
        if kind == "other-unit" and i == victim:
            size_unit = unit * rng.choice([2.54, 1 / 2.54])
        turned = rng.uniform(0, 360) if apart else degrees
        mirror = mirrored != (kind == "mirrored-size" and i == victim)
        nest = by in ("layer", "colour", "file")
        x, y = shift if nest else (shift[0] + 1500 * i, shift[1])
        place = Place(turned, mirror, x, y, size_unit)
        target, attribs = doc.modelspace(), {"layer": "0"}
        name = pattern % label if by == "layer" else ""
        if kind == "no-size":
            name = "SLEEVES"
        if by == "layer":
            attribs["layer"] = layer(doc, name)
        elif by == "colour":
            attribs = {"layer": layer(doc, "SLEEVES"), "color": i + 1}
        elif by in ("block", "nested"):
            block = "SLEEVE_" + label
            scale = rng.choice([1.0, 1.0, 25.4]) if kind == "clean" else 1.0
            inner = doc.blocks.new(block, base_point=(12.5 / unit / scale, -7.0 / unit / scale))
            if kind == "empty-size" and i == victim:
                continue
            place = Place(0.0, False, 0.0, 0.0, size_unit * scale)
            xs = -scale if mirror else scale
            if by == "nested":
                outer = doc.blocks.new("SHEET_" + label)
                outer.add_blockref(block, (3.0, 4.0), dxfattribs={"xscale": xs, "yscale": scale, "rotation": 30})
                doc.modelspace().add_blockref("SHEET_" + label, (x / unit, y / unit), dxfattribs={"rotation": turned - 30})
            else:
                doc.modelspace().add_blockref(block, (x / unit, y / unit), dxfattribs={"xscale": xs, "yscale": scale, "rotation": turned})
            target, attribs = inner, {"layer": layer(doc, "CONTOUR")}
        else:
            attribs["layer"] = layer(doc, "SLEEVE")
        if kind == "empty-size" and i == victim:
            continue
        chain = Chain(s, style, step)
        truth = chain.figures()
        if kind == "moved-vertex" and i == victim:
            n = len(chain.cap) - 1
            k = rng.choice([k for k in range(n) if 0.12 < k / n < 0.4 or 0.6 < k / n < 0.88])
            a, b = chain.cap[k - 1], chain.cap[k + 1]
            off = rng.uniform(2.5, 9) * rng.choice([-1, 1])
            chain.cap[k] = (chain.cap[k][0] - (b[1] - a[1]) / math.dist(a, b) * off, chain.cap[k][1] + (b[0] - a[0]) / math.dist(a, b) * off)
        if kind == "moved-corner" and i == victim:
            grain = "GRAIN" if grain == "none" else grain
            out = rng.uniform(5, 9)
            chain.cap[-1] = (chain.cap[-1][0] + out, chain.cap[-1][1] - rng.choice([0.0, 2.0]))
        if kind == "wavy-cap" and i == victim:
            n = len(chain.cap) - 1
            waves = []
            for k, p in enumerate(chain.cap):
                a, b = chain.cap[max(0, k - 1)], chain.cap[min(n, k + 1)]
                swing = 2.5 * math.sin(2 * math.pi * 4 * k / n) * min(1, 8 * k / n, 8 * (n - k) / n)
                waves.append((p[0] - (b[1] - a[1]) / math.dist(a, b) * swing, p[1] + (b[0] - a[0]) / math.dist(a, b) * swing))
            chain.cap = waves
        ring = chain.ring()
        if kind == "no-axis":
            hem = len(chain.cap) + len(chain.down) - 1
            ring[hem] = (ring[hem][0], ring[hem][1] + 26)
        if kind == "open-outline" and i == victim:
            points = [place.at(p) for p in ring[len(chain.cap) - 1:] + ring[:len(chain.cap) - 8]]
            for a, b in zip(points, points[1:]):
                target.add_line(a, b, dxfattribs=attribs)
        elif how.startswith("spline"):
            splines(target, chain, place, attribs, how == "spline-fit")
        else:
            cap, all_ = len(chain.cap), len(ring)
            spots = [cap // 4, cap // 4 + 6, 3 * cap // 4]
            if len(chain.down) > 8:
                spots.append(cap + len(chain.down) // 2)
            sewn = notched(ring, spots, notch) if notch != "none" else ring
            sew = attribs
            if cut == "named" and by in ("block", "nested", "text", "mtext", "file"):
                sew = {**attribs, "layer": layer(doc, "SEWLINE")}
                draw(target, allowed(ring, 10.0), place, how, {**attribs, "layer": layer(doc, "CUTLINE")}, rng)
            elif cut == "same":
                draw(target, allowed(ring, 10.0), place, how, attribs, rng)
            draw(target, sewn, place, how, sew, rng)
        if kind == "two-of-a-size" and i == victim:
            second = Chain(Size(s.front + 4, s.back + 4, s.height - 3, s.depth + 12, s.wrist), style, step)
            draw(target, second.ring(), Place(0 if by == "block" else turned, mirror and by != "block", place.x + 700, place.y + 1900, size_unit), "lw" if version != "R12" else "poly", attribs, rng)
        if grain != "none":
            on = attribs["layer"] if grain == "own" else layer(doc, "GRAIN")
            a, b = (s.back * 0.1, s.height * 0.2), (s.back * 0.1, -s.depth * 0.7)
            target.add_line(place.at(a), place.at(b), dxfattribs={**attribs, "layer": on})
            if grain == "arrows":
                for dx in (-5, 5):
                    target.add_line(place.at(a), place.at((a[0] + dx, a[1] - 9)), dxfattribs={**attribs, "layer": on})
        if "inner" in extras:
            points = [place.at((-s.front * 0.8 + 1.6 * s.front * t / 20, -s.depth * 0.35 - 6 * math.sin(math.pi * t / 20))) for t in range(21)]
            target.add_lwpolyline(points, dxfattribs=attribs) if version != "R12" else target.add_polyline2d(points, dxfattribs=attribs)
        if "cuff" in extras and by in ("block", "text"):
            pass
        inside_at = place.at((s.back * 0.3, -s.depth * 0.5))
        height = {"layer": "0", "height": 8 / unit}
        if by in ("text", "file"):
            doc.modelspace().add_text(rng.choice(["Size %s", "SIZE: %s", "Gr. %s"]) % label, dxfattribs=height).set_pos(inside_at)
        if by == "mtext":
            text = doc.modelspace().add_mtext("Sleeve\\PSize %s\\PCut 2" % label, dxfattribs={"layer": "0", "char_height": 8 / unit})
            text.set_location(inside_at)
        if by == "colour":
            doc.modelspace().add_text(label, dxfattribs={**height, "color": i + 1}).set_pos(((x + 900) / unit, (y + 30 * i) / unit))
        boxes.append((x, y))
        for measure, value in truth.items():
            if kind in ("exchanged-sizes", "lost-unit", "other-unit", "mirrored-size", "two-of-a-size", "open-outline") and i in (victim, other):
                continue
            if kind in ("wavy-cap", "moved-vertex", "moved-corner") and i == victim and measure not in ("wrist",):
                continue
            if kind in ("no-axis", "false-header", "no-size"):
                continue
            if mirror and measure in ("frontCapLine", "backCapLine"):
                measure = {"frontCapLine": "backCapLine", "backCapLine": "frontCapLine"}[measure]
            figures.append((number, label, measure, value))
    names = []
    for k, drawing in enumerate(docs):
        space = drawing.modelspace()
        if stated == "text":
            words = {1.0: "UNITS: METRIC", 10.0: "UNITS: CM", 25.4: "UNITS: ENGLISH"}[unit]
            space.add_text(words, dxfattribs={"height": 5 / unit}).set_pos((shift[0] / unit, (shift[1] - 900) / unit))
        if "legend" in extras:
            space.add_text("Style 4711, rev. 2, drawn by hand", dxfattribs={"height": 5 / unit}).set_pos((shift[0] / unit, (shift[1] - 950) / unit))
        wide = shift[0] + (1500 * count if by not in ("layer", "colour", "file") else 900)
        if "frame" in extras:
            corners = [(shift[0] - 900, shift[1] - 1000), (wide, shift[1] - 1000), (wide, shift[1] + 900), (shift[0] - 900, shift[1] + 900)]
            space.add_polyline2d([(x / unit, y / unit) for x, y in corners], close=True, dxfattribs={"layer": "FRAME"})
        if "square" in extras:
            corners = [(shift[0] - 850, shift[1] - 950), (shift[0] - 750, shift[1] - 950), (shift[0] - 750, shift[1] - 850), (shift[0] - 850, shift[1] - 850)]
            space.add_polyline2d([(x / unit, y / unit) for x, y in corners], close=True, dxfattribs={"layer": "0"})
        names.append("room-%d-%s.dxf" % (number, k if by != "file" else labels[min(k, count - 1)]))
        drawing.saveas(os.path.join(folder, names[-1]))
    given = {1.0: "mm", 10.0: "cm", 25.4: "in"}[unit] if stated == "given" and kind != "no-unit" else "-"
    words = "%s by %s %s, turned by %.1f%s, %s%s, grain %s, notch %s, cut line %s, step %.1f, %s%s" % (
        how, by, pattern if by == "layer" else "", degrees, " each its own way" if apart else "", "mirrored " if mirrored else "", version, grain, notch, cut, step,
        "+".join(extras), ", broken grade" if broken else "")
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
