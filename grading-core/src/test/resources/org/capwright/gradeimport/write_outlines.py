"""Writes the same three sleeves in many ways with ezdxf, a DXF library that this project did not write.

Cap of each half: two arcs of one radius r = (w^2 + h^2) / (4 h) that meet half way with one tangent, level at both ends.
"""
import math
import sys

import ezdxf
from ezdxf.math import BSpline, rational_bspline_from_arc, Vec3

OUT = sys.argv[1]
# size, half width, cap height, depth of the hem below the bicep line, half width at the hem
SIZES = [("36", 170, 125, 440, 100), ("38", 180, 130, 450, 105), ("40", 192, 136, 455, 110)]


def arcs(w, h):
    """radius and angle of each of the two arcs of a half"""
    return (w * w + h * h) / (4 * h), 2 * math.atan(h / w)


def ring(w, h, d, v):
    """Counter-clockwise from the left end of the hem, with bulges."""
    b = math.tan(arcs(w, h)[1] / 4)
    return [(-v, -d, 0), (v, -d, 0), (w, 0, -b), (w / 2, h / 2, b), (0, h, b), (-w / 2, h / 2, -b), (-w, 0, 0)]


def half(w, h, d, v):
    b = math.tan(arcs(w, h)[1] / 4)
    return [(0, -d, 0), (v, -d, 0), (w, 0, -b), (w / 2, h / 2, b), (0, h, 0)]


def moved(points, dx, dy):
    return [(x + dx, y + dy, b) for x, y, b in points]


def arc_list(w, h):
    """centre, radius, start and end angle of the four arcs, counter-clockwise as DXF wants"""
    r, t = arcs(w, h)
    t = math.degrees(t)
    return [((w, r), r, 270 - t, 270), ((0, h - r), r, 90 - t, 90), ((0, h - r), r, 90, 90 + t), ((-w, r), r, 270, 270 + t)]


def straight(w, h, d, v):
    return [((-w, 0), (-v, -d)), ((-v, -d), (v, -d)), ((v, -d), (w, 0))]


def new(version, units=4):
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"] = units
    return doc


def lwpolyline_layers():
    doc = new("R2000")
    for size, w, h, d, v in SIZES:
        doc.modelspace().add_lwpolyline(
            ring(w, h, d, v), format="xyb", close=True, dxfattribs={"layer": "SLEEVE_" + size})
    doc.saveas(OUT + "/lwpolyline-layers.dxf")


def arcs_in_blocks():
    """Turned by a quarter, as markers lie along the grain; lines across the piece on the same layer."""
    doc = new("R2010")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        block = doc.blocks.new("PIECE " + str(7 * i + 3))
        for centre, r, start, end in arc_list(w, h):
            block.add_arc(centre, r, start, end, dxfattribs={"layer": "1"})
        for a, b in straight(w, h, d, v):
            block.add_line(a, b, dxfattribs={"layer": "1"})
        block.add_line((-w, 0), (w, 0), dxfattribs={"layer": "1"})
        block.add_line((0, -d + 50), (0, h - 40), dxfattribs={"layer": "7"})
        block.add_text("SIZE: " + size, dxfattribs={"layer": "1"}).set_placement((-20, -100))
        block.add_text("PIECE NAME: SLEEVE", dxfattribs={"layer": "1"}).set_placement((-20, -120))
        doc.modelspace().add_blockref(block.name, (1000 * i, 77.5), dxfattribs={"rotation": 90})
    doc.saveas(OUT + "/arcs-in-blocks.dxf")


def rational_splines_in_files():
    """Inches; the cap halves are splines with weights."""
    for size, w, h, d, v in SIZES:
        doc = new("R2018", 1)
        for centre, r, start, end in arc_list(w, h):
            spline = rational_bspline_from_arc(Vec3(centre[0] / 25.4, centre[1] / 25.4), r / 25.4, start, end)
            doc.modelspace().add_spline().apply_construction_tool(spline)
        for a, b in straight(w, h, d, v):
            doc.modelspace().add_line((a[0] / 25.4, a[1] / 25.4), (b[0] / 25.4, b[1] / 25.4))
        doc.saveas(OUT + "/splines-" + size + ".dxf")


def fold_r12():
    """Half pieces; sew line on layer 14 inside a boundary on layer 1; unit by text alone."""
    doc = ezdxf.new("R12")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        block = doc.blocks.new("S" + str(i), base_point=(5, 5))
        for layer, grow in (("1", 12), ("14", 0)):
            points = half(w + grow, h + grow, d + grow, v + grow)
            block.add_polyline2d(points, format="xyb", close=True, dxfattribs={"layer": layer})
        block.add_line((0, h + 12), (0, -d - 12), dxfattribs={"layer": "6"})
        block.add_text("SIZE: " + size, dxfattribs={"layer": "1"}).set_placement((20, -100))
        doc.modelspace().add_blockref(block.name, (600 * i, 0), dxfattribs={"layer": "1"})
    doc.modelspace().add_text("UNITS: METRIC", dxfattribs={"layer": "1"})
    doc.modelspace().add_text("SAMPLE SIZE: 40", dxfattribs={"layer": "1"})
    doc.saveas(OUT + "/fold-r12.dxf")


def left_half():
    """The half to the left of the fold."""
    doc = new("R2000")
    for size, w, h, d, v in SIZES:
        points = [(-x, y, -b) for x, y, b in half(w, h, d, v)]
        doc.modelspace().add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": size})
    doc.saveas(OUT + "/left-half.dxf")


def scaled_mirrored_nested():
    """Half size in the block, doubled and mirrored by one insert within another."""
    doc = new("R2007")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        inner = doc.blocks.new("INNER" + str(i), base_point=(10, 20))
        inner.add_lwpolyline([(x / 2 + 3, y / 2 - 4, b) for x, y, b in ring(w, h, d, v)], format="xyb", close=True)
        outer = doc.blocks.new("SLEEVE-" + size)
        outer.add_blockref(inner.name, (1, 2), dxfattribs={"xscale": -2, "yscale": 2})
        outer.add_text("SIZE " + size).set_placement((0, 0))
        doc.modelspace().add_blockref(outer.name, (900 * i, -3000))
    doc.saveas(OUT + "/scaled-mirrored-nested.dxf")


def grouped():
    """Some blocks of pieces stand in numbered groups, as drawing programs make them."""
    doc = new("R2010")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        piece = doc.blocks.new("SLEEVE_" + size)
        piece.add_lwpolyline(ring(w, h, d, v), format="xyb", close=True)
        lining = doc.blocks.new("SLEEVE_FUTTER_" + size)
        lining.add_lwpolyline(ring(w, h, d - 20, v), format="xyb", close=True)
        doc.modelspace().add_blockref(lining.name, (900 * i, 2000))
        if i == 1:
            doc.modelspace().add_blockref(piece.name, (900 * i, 0))
        else:
            group = doc.blocks.new("GROUP_" + str(7 - i))
            group.add_blockref(piece.name, (0, 0))
            doc.modelspace().add_blockref(group.name, (900 * i, 0))
    doc.saveas(OUT + "/grouped.dxf")


def loose_corners():
    """Each edge is a line of its own; at the corners the ends lie 0.3 mm apart or cross one another."""
    doc = new("R2010")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        corners = ring(w, h, d, v)
        apex = max(corners, key=lambda p: p[1])
        k = corners.index(apex)
        corners = corners[k:] + corners[:k]
        for j, (one, two) in enumerate(zip(corners, corners[1:] + corners[:1])):
            off = [0.3 if (i + j) % 3 == n else -0.2 for n in (0, 1)]
            straight = one[2] == 0
            ends = [(one[0], one[1] + (off[0] if straight else 0), one[2]), (two[0], two[1] + (off[1] if straight else 0), 0)]
            doc.modelspace().add_lwpolyline(ends, format="xyb", dxfattribs={"layer": size})
    doc.saveas(OUT + "/loose-corners.dxf")


def unassigned():
    """A nest on one layer; the sizes are listed in a corner."""
    doc = new("R2010")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        doc.modelspace().add_lwpolyline(ring(w, h, d, v), format="xyb", close=True)
        doc.modelspace().add_text("SIZE " + size).set_placement((-900, 12 * i))
    doc.saveas(OUT + "/unassigned.dxf")


def sheet():
    """Side by side on one layer, upside down, each with its size written inside."""
    doc = new("R2013")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        points = [(-x, -y, b) for x, y, b in ring(w, h, d, v)]
        doc.modelspace().add_lwpolyline(moved(points, 700 * i, 0), format="xyb", close=True)
        doc.modelspace().add_text(size).set_placement((700 * i, 100))
    doc.saveas(OUT + "/sheet.dxf")


def seen_from_behind():
    """Extrusion (0, 0, -1): its own x runs to the left."""
    doc = new("R2000")
    for size, w, h, d, v in SIZES:
        doc.modelspace().add_lwpolyline(
            ring(w, h, d, v), format="xyb", close=True, dxfattribs={"layer": "NET-" + size, "extrusion": (0, 0, -1)})
    doc.saveas(OUT + "/seen-from-behind.dxf")


def cubic_splines():
    """Caps are cubic splines without weights: two Bezier curves each side, level at the ends."""
    doc = new("R2010")
    for size, w, h, d, v in SIZES:
        attribs = {"layer": "SEW " + size}
        for side in (1, -1):
            points = [(0, h), (side * w / 2, h), (side * w / 2, 0), (side * w, 0)]
            spline = BSpline([Vec3(x, y) for x, y in points], order=4)
            doc.modelspace().add_spline(dxfattribs=attribs).apply_construction_tool(spline)
        for a, b in straight(w, h, d, v):
            doc.modelspace().add_line(a, b, dxfattribs=attribs)
    doc.saveas(OUT + "/cubic-splines.dxf")


def open_at_fold():
    """Net line left open where the fold line closes it, centimetres."""
    doc = new("R2000", 5)
    for i, (size, w, h, d, v) in enumerate(SIZES):
        block = doc.blocks.new("SLEEVE " + size)
        points = [(x / 10, y / 10, b) for x, y, b in half(w, h, d, v)]
        block.add_lwpolyline(points, format="xyb", close=False, dxfattribs={"layer": "NET"})
        block.add_line((0, -d / 10), (0, h / 10), dxfattribs={"layer": "FOLD"})
        doc.modelspace().add_blockref(block.name, (80 * i, 0))
    doc.saveas(OUT + "/open-at-fold.dxf")


def named_otherwise():
    """Sizes by layers of other languages, by texts that name piece and size, by layers within blocks that a program named."""
    def nest(file, layers):
        doc = new("R2010")
        for layer, (_, w, h, d, v) in zip(layers, SIZES):
            doc.modelspace().add_lwpolyline(ring(w, h, d, v), format="xyb", close=True, dxfattribs={"layer": layer})
        doc.saveas(OUT + "/" + file + ".dxf")

    nest("hyphened-layers", ["Talla-36", "Talla-38", "Talla-40"])
    nest("underlined-layers", ["TAILLE_36", "TAILLE_38", "TAILLE_40"])
    nest("joined-layers", ["TS", "TM", "TXL"])
    nest("joined-numbers", ["GOWN104", "GOWN110", "GOWN116"])
    nest("numbered-layers", ["1", "2", "3"])

    doc = new("R2010")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        doc.modelspace().add_lwpolyline(moved(ring(w, h, d, v), 700 * i, 0), format="xyb", close=True)
        doc.modelspace().add_text("\u00c4rmel Gr. " + size).set_placement((700 * i - 60, -100))
    doc.saveas(OUT + "/texts-of-piece-and-size.dxf")

    for file, layer, text in (("texts-in-blocks", "NET", "Sleeve "), ("layers-in-blocks", "manica tg ", "")):
        doc = new("R2010")
        for i, (size, w, h, d, v) in enumerate(SIZES):
            block = doc.blocks.new("B" + str(7 - i))
            block.add_lwpolyline(
                ring(w, h, d, v), format="xyb", close=True, dxfattribs={"layer": layer + ("" if text else size)})
            if text:
                block.add_text(text + size).set_placement((-60, -100))
            doc.modelspace().add_blockref(block.name, (900 * i, 0))
        doc.saveas(OUT + "/" + file + ".dxf")


def partly_named():
    """A text names the sleeve in two of three blocks; the third lies between the two sizes."""
    doc = new("R2010")
    for i, (size, w, h, d, v) in enumerate(SIZES):
        block = doc.blocks.new("GOWN_" + size)
        block.add_lwpolyline(ring(w, h, d, v), format="xyb", close=True)
        if size != "38":
            block.add_text("Sleeve").set_placement((-60, -100))
        doc.modelspace().add_blockref(block.name, (900 * i, 0))
    doc.saveas(OUT + "/partly-named.dxf")


def pairs():
    """Each sleeve by arcs and, beside it for the other arm, by straight steps of a few millimetres."""
    doc = new("R2010")
    for size, w, h, d, v in SIZES:
        attribs = {"layer": "SLEEVE_" + size}
        doc.modelspace().add_lwpolyline(ring(w, h, d, v), format="xyb", close=True, dxfattribs=attribs)
        cap = []
        for centre, r, start, end in arc_list(w, h):
            angles = [start + (end - start) * k / 24 for k in range(25)]
            points = [(centre[0] + r * math.cos(math.radians(a)), centre[1] + r * math.sin(math.radians(a))) for a in angles]
            cap += points if points[0][0] > points[-1][0] else points[::-1]
        steps = [p for p, q in zip(cap, [(9e9, 0)] + cap) if math.dist(p, q) > 1e-6]
        doc.modelspace().add_lwpolyline(
            [(1500 + x, y) for x, y in [(-v, -d), (v, -d)] + steps], close=True, dxfattribs=attribs)
    doc.saveas(OUT + "/pairs.dxf")


for write in (named_otherwise, partly_named, pairs, lwpolyline_layers, arcs_in_blocks, rational_splines_in_files, fold_r12, left_half,
              scaled_mirrored_nested, grouped, loose_corners, unassigned, sheet, seen_from_behind, cubic_splines, open_at_fold):
    write()
