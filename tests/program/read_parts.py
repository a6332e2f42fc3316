# Reads a cut list, part drawings and a report with the standard library, ezdxf and jsonschema, and
# says on standard output what does not fit together. Called with the folder and the report's name.
import csv
import json
import math
import pathlib
import sys
import xml.etree.ElementTree as tree

import ezdxf
from ezdxf import bbox

folder, name = pathlib.Path(sys.argv[1]), sys.argv[2]
report = json.loads((folder / f"{name}.json").read_text(encoding="utf-8"))
near = lambda a, b: abs(a - b) < 2e-3
faults = []


def expect(condition, words):
    if not condition:
        faults.append(words)


def file_mark(mark):
    return "".join(c if c.isascii() and c.isalnum() or c in "-_" else "_" for c in mark)


# The cut list: RFC 4180 has CR LF after every record and the same number of fields in each.
raw = (folder / f"{name}-cut-list.csv").read_bytes()
expect(raw.endswith(b"\r\n"), "the last record has no end")
with open(folder / f"{name}-cut-list.csv", newline="", encoding="utf-8") as file:
    records = list(csv.reader(file, strict=True))
head, rows = records[0], [dict(zip(records[0], record)) for record in records[1:]]
expect(all(len(record) == len(head) for record in records), "records differ in length")
expect([row["mark"] for row in rows] == [part["mark"] for part in report["parts"]], "marks differ")
for row, part in zip(rows, report["parts"]):
    expect(row["part"] == part["name"], f"{part['mark']}: name")
    expect(int(row["off"]) == part["quantity"], f"{part['mark']}: quantity")
    for key in ("length", "width", "thickness"):
        expect(near(float(row[f"{key} mm"]), part[key]), f"{part['mark']}: {key}")
        expect(near(float(row[f"blank {key} mm"]), part["blank"][key]), f"{part['mark']}: blank")


def area(points):
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1])) / 2


plain_parts = 0
for part in report["parts"]:
    mark = part["mark"]
    size = (part["length"], part["width"])
    # DXF: sound for ezdxf, true size, and for a part of one outline its area times thickness is
    # its volume.
    document = ezdxf.readfile(folder / f"{name}-part-{file_mark(mark)}.dxf")
    expect(document.dxfversion == "AC1009", f"{mark}: not release 12")
    expect(not document.audit().has_errors, f"{mark}: ezdxf finds errors")
    space = document.modelspace()
    box = bbox.extents(space.query("LINE POLYLINE CIRCLE"))
    expect(near(box.size.x, size[0]) and near(box.size.y, size[1]), f"{mark}: extents {box.size}")
    loops = {}
    for line in space.query("POLYLINE"):
        expect(line.is_closed, f"{mark}: an open loop")
        loops.setdefault(line.dxf.layer, []).append([tuple(p)[:2] for p in line.points()])
        expect(-part["thickness"] - 2e-3 <= line.dxf.elevation.z <= 1e-6, f"{mark}: height")
    circles = [c for c in space.query("CIRCLE") if near(c.dxf.center.z, 0)]
    same_outline = sorted(map(lambda l: round(abs(area(l)), 1), loops.get("SHOW_FACE", []))) == sorted(
        map(lambda l: round(abs(area(l)), 1), loops.get("BACK_FACE", []))
    )
    floors = any(key.startswith("FLOOR") for key in loops)
    edges = {(round(p.x, 2), round(p.y, 2)) for l in space.query("LINE") for p in (l.dxf.start, l.dxf.end)}
    corners = {(round(x, 2), round(y, 2)) for l in loops.get("SHOW_FACE", []) for x, y in l}
    if same_outline and not floors and not space.query("CIRCLE") and edges <= corners:
        plain_parts += 1
        volume = sum(area(l) for l in loops["SHOW_FACE"]) * part["thickness"]
        expect(abs(volume - part["volume_mm3"]) < 1e-5 * volume + 1, f"{mark}: volume {volume}")
    # SVG: one unit is one millimetre; what is seen and hidden together has the part's size.
    root = tree.parse(folder / f"{name}-part-{file_mark(mark)}.svg").getroot()
    space = "{http://www.w3.org/2000/svg}"
    view = [float(v) for v in root.get("viewBox").split()]
    expect(root.get("width") == f"{view[2]:g}mm" or near(float(root.get("width")[:-2]), view[2]), f"{mark}: unit")
    points = []
    for group in root.iter(f"{space}g"):
        if group.get("class") in ("visible edges", "hidden edges"):
            for path in group.iter(f"{space}path"):
                numbers = path.get("d").replace("M", " ").replace("L", " ").split()
                points += list(zip(map(float, numbers[::2]), map(float, numbers[1::2])))
    expect(points, f"{mark}: an empty SVG")
    if points:
        wide = max(p[0] for p in points) - min(p[0] for p in points)
        high = max(p[1] for p in points) - min(p[1] for p in points)
        expect(near(wide, size[0]) and near(high, size[1]), f"{mark}: SVG {wide} x {high}")

print("\n".join(faults) if faults else f"{len(report['parts'])} parts agree, {plain_parts} by volume")
sys.exit(1 if faults else 0)
