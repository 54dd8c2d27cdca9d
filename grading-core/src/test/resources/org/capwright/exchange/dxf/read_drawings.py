"""Reads DXF drawings with ezdxf and tells what it found, one fact a line, fields parted by tabs.

Usage: read_drawings.py MODE FILE...   MODE is "measure" (areas and boxes) or "points" (every vertex and text as well).
Lines: FILE name version | ERROR text | FIX code text | POLYLINE block layer closed count area left bottom right top | VERTEX x y
| TEXT block layer x y words | POINT block layer x y | INSERT block x y | EXTENTS left bottom right top
The model space counts as block "*". Coordinates of 17 digits.
"""
import gc
import sys

import ezdxf

gc.disable()  # the objects live until the drawing is done; looking for garbage only takes time


def number(value):
    return repr(float(value))


def tell(*fields):
    sys.stdout.write("\t".join(str(field) for field in fields) + "\n")


def area(points):
    twice = 0.0
    origin_x, origin_y = points[0]
    for (x1, y1), (x2, y2) in zip(points, points[1:] + points[:1]):
        twice += (x1 - origin_x) * (y2 - origin_y) - (x2 - origin_x) * (y1 - origin_y)
    return twice / 2


def read(entities, block, points_too):
    for entity in entities:
        kind = entity.dxftype()
        layer = entity.dxf.layer
        if kind == "POLYLINE":
            points = [(v.dxf.location.x, v.dxf.location.y) for v in entity.vertices]
            xs = [p[0] for p in points]
            ys = [p[1] for p in points]
            tell("POLYLINE", block, layer, int(entity.is_closed), len(points), number(area(points)),
                 number(min(xs)), number(min(ys)), number(max(xs)), number(max(ys)))
            if points_too:
                for x, y in points:
                    tell("VERTEX", number(x), number(y))
        elif kind == "INSERT":
            tell("INSERT", entity.dxf.name, number(entity.dxf.insert.x), number(entity.dxf.insert.y))
        elif points_too and kind == "POINT":
            tell("POINT", block, layer, number(entity.dxf.location.x), number(entity.dxf.location.y))
        elif points_too and kind == "TEXT":
            tell("TEXT", block, layer, number(entity.dxf.insert.x), number(entity.dxf.insert.y), entity.dxf.text)


def main(mode, files):
    for index, name in enumerate(files):
        try:
            drawing = ezdxf.readfile(name)
        except (ezdxf.DXFError, OSError) as error:
            tell("FILE", name, "unreadable")
            tell("ERROR", error)
            continue
        tell("FILE", name, drawing.dxfversion)
        audit = drawing.audit()
        for error in audit.errors:
            tell("ERROR", error.message)
        for fix in audit.fixes:
            tell("FIX", int(fix.code), fix.message)
        low, high = drawing.header["$EXTMIN"], drawing.header["$EXTMAX"]
        tell("EXTENTS", number(low[0]), number(low[1]), number(high[0]), number(high[1]))
        for block in drawing.blocks:
            if not block.name.startswith(("*", "$")):
                read(block, block.name, mode == "points")
        read(drawing.modelspace(), "*", mode == "points")
        del drawing, audit
        if index % 50 == 49:
            gc.collect()


main(sys.argv[1], sys.argv[2:])
