"""Reads a DXF of blocks with ezdxf and prints, per block, the extent of its sew line (layer 14) and fold line (layer 6) in mm."""
import json
import sys

import ezdxf

doc = ezdxf.readfile(sys.argv[1])
auditor = doc.audit()
blocks = []
for block in doc.blocks:
    if block.name.startswith("*") or block.name.startswith("$"):
        continue
    texts = [e.dxf.text for e in block.query("TEXT")]
    named = {t.split(":", 1)[0].strip().upper(): t.split(":", 1)[1].strip() for t in texts if ":" in t}
    points = []
    for line in block.query('POLYLINE[layer=="14"]'):
        points += [v.dxf.location for v in line.vertices]
    for line in block.query('LINE[layer=="14"]'):
        points += [line.dxf.start, line.dxf.end]
    if not points:
        continue
    blocks.append({
        "name": block.name,
        "piece": named.get("PIECE NAME", "").upper(),
        "size": named.get("SIZE", ""),
        "left": min(p.x for p in points),
        "right": max(p.x for p in points),
        "bottom": min(p.y for p in points),
        "top": max(p.y for p in points),
    })
print(json.dumps({"version": doc.dxfversion, "errors": len(auditor.errors), "blocks": blocks}))
