"""Writes the same invented shapes as DXF in each release, with ezdxf's own figures of them beside.

Usage: write-dxf-shapes.py FOLDER. Each shape lies on a layer of its name. figures.json holds, by release and layer,
length, area (0 for open ones) and box in mm, y up, of ezdxf's chords of at most 0.2 um beside the shape.
"""
import json
import math
import sys

import ezdxf
from ezdxf.math import rational_bspline_from_arc

RELEASES = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]
CHORD_MM = 0.0002
# No block is drawn larger than this.
MOST_SCALE = 80
BELOW = (0, 0, -1)


def bulged(layout, points, layer, **more):
    attribs = {"layer": layer, **more}
    if layout.doc.dxfversion == "AC1009":
        return layout.add_polyline2d(points, format="xyb", close=True, dxfattribs=attribs)
    return layout.add_lwpolyline(points, format="xyb", close=True, dxfattribs=attribs)


def common(doc):
    msp = doc.modelspace()
    msp.add_circle((50, 50), 37.5, dxfattribs={"layer": "disc"})
    msp.add_circle((-250, 50), 30, dxfattribs={"layer": "disc-below", "extrusion": BELOW})
    msp.add_arc((450, 50), 40, 300, 120, dxfattribs={"layer": "arc"})
    msp.add_arc((650, 50), 40, 10, 5, dxfattribs={"layer": "arc-wide"})
    msp.add_line((800, 0), (903.21, 77.77), dxfattribs={"layer": "line"})
    bulged(msp, [(1000, 0, 0.4), (1100, 0, 0), (1110, 60, -0.35), (990, 70, 1.5)], "bulges")
    bulged(msp, [(-1200, 0, 0.4), (-1300, 0, 0), (-1310, 60, -0.35), (-1190, 70, 0)], "bulges-below", extrusion=BELOW)
    # A rounded rectangle as loose lines and arcs, drawn in any order and direction.
    chain = {"layer": "chain"}
    msp.add_line((1410, 0), (1490, 0), dxfattribs=chain)
    msp.add_line((1490, 60), (1410, 60), dxfattribs=chain)
    msp.add_line((1400, 50), (1400, 10), dxfattribs=chain)
    msp.add_line((1500, 50), (1500, 10), dxfattribs=chain)
    for x, y, start in [(1490, 50, 0), (1410, 50, 90), (1410, 10, 180), (1490, 10, 270)]:
        msp.add_arc((x, y), 10, start, start + 90, dxfattribs=chain)
    inner = doc.blocks.new("tab", base_point=(5, 5))
    bulged(inner, [(0, 0, 0), (40, 0, 0.5), (40, 20, 0), (0, 20, 0)], "0")
    outer = doc.blocks.new("strap")
    outer.add_blockref("tab", (10, 0), dxfattribs={"xscale": 2, "yscale": 2, "rotation": 15, "layer": "0"})
    attribs = {"xscale": -1, "yscale": 1, "rotation": 30, "layer": "mirrored"}
    msp.add_blockref("strap", (1700, 0), dxfattribs=attribs)
    attribs = {"xscale": 1.5, "yscale": 0.5, "rotation": 30, "layer": "uneven"}
    msp.add_blockref("strap", (1800, 0), dxfattribs=attribs)
    attribs = {"layer": "insert-below", "rotation": 20, "extrusion": BELOW}
    msp.add_blockref("strap", (-2000, 0), dxfattribs=attribs)
    attribs = {"layer": "array", "row_count": 2, "column_count": 3, "row_spacing": 120, "column_spacing": 150}
    msp.add_blockref("tab", (2200, 0), dxfattribs={**attribs, "rotation": 10})


def later(doc):
    """What came after R12."""
    msp = doc.modelspace()
    msp.add_ellipse((50, 450), (60, 20), 0.4, dxfattribs={"layer": "ellipse"})
    msp.add_ellipse((250, 450), (60, 20), 0.4, 0.3, 4.1, dxfattribs={"layer": "ellipse-part"})
    attribs = {"layer": "ellipse-below", "extrusion": BELOW}
    msp.add_ellipse((450, 450), (60, 20), 0.4, 0.3, 4.1, dxfattribs=attribs)
    disc = doc.blocks.new("disc")
    disc.add_circle((0, 0), 1, dxfattribs={"layer": "0"})
    attribs = {"layer": "flattened", "xscale": 80, "yscale": 30, "rotation": 25}
    msp.add_blockref("disc", (650, 450), dxfattribs=attribs)
    ring = [(0, 0), (60, -20), (120, 10), (110, 80), (50, 100), (-20, 60)]

    def ring_at(x):
        return [(x + a, 400 + b, 0) for a, b in ring]

    msp.add_spline(dxfattribs={"layer": "closed-cubic"}).set_closed(ring_at(850), degree=3)
    msp.add_spline(dxfattribs={"layer": "open-cubic"}).set_open_uniform(ring_at(1050), degree=3)
    for degree, x in [(2, 1250), (5, 1450)]:
        points = [*ring_at(x), *ring_at(x)[:1]]
        msp.add_spline(dxfattribs={"layer": f"degree-{degree}"}).set_open_uniform(points, degree=degree)
    weights = [1, 2, 0.5, 3, 1, 1.5]
    spline = msp.add_spline(dxfattribs={"layer": "rational"})
    spline.set_open_rational(ring_at(1650), weights, degree=3)
    arc = rational_bspline_from_arc((1900, 450), 50, 20, 290)
    msp.add_spline(dxfattribs={"layer": "rational-arc"}).apply_construction_tool(arc)


def chords(entity, chord=CHORD_MM):
    kind = entity.dxftype()
    if kind == "LINE":
        return [entity.dxf.start, entity.dxf.end]
    if kind in ("LWPOLYLINE", "POLYLINE"):
        return linked([chords(part, chord) for part in entity.virtual_entities()])
    if kind == "SPLINE" and entity.closed:
        # A closed one is meant between the knots where all its control points count; its flattening goes beyond.
        tool = entity.construction_tool()
        knots = tool.knots()
        first, last = knots[tool.degree], knots[tool.count]
        steps = 20000
        return list(tool.points([first + (last - first) * i / steps for i in range(steps + 1)]))
    return list(entity.flattening(chord))


def linked(parts):
    """Parts one after the other; arcs run anticlockwise, whatever way the polyline runs."""
    first, second = parts[0], parts[1]
    if min(first[0].distance(p) for p in (second[0], second[-1])) < 1e-9:
        parts[0] = first[::-1]
    points = list(parts[0])
    for part in parts[1:]:
        points.extend(part if points[-1].distance(part[0]) < 1e-9 else part[::-1])
    return points


def all_chords(entity, chord=CHORD_MM):
    """Chords of one entity, or of all that an insert draws: those of the block under ezdxf's matrix of the insert."""
    if entity.dxftype() != "INSERT":
        return [chords(entity, chord)]
    found = []
    for insert in entity.multi_insert() if entity.mcount > 1 else [entity]:
        matrix = insert.matrix44()
        for part in insert.block():
            found.extend(list(matrix.transform_vertices(points)) for points in all_chords(part, chord / MOST_SCALE))
    return found


def figures(entities):
    length = area = 0.0
    box = [math.inf, math.inf, -math.inf, -math.inf]
    for points in (points for entity in entities for points in all_chords(entity)):
        for a, b in zip(points, points[1:]):
            length += math.hypot(b.x - a.x, b.y - a.y)
        if points[0].distance(points[-1]) < 1e-6:
            area += abs(sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:]))) / 2
        xs, ys = [p.x for p in points], [p.y for p in points]
        box = [min(box[0], *xs), min(box[1], *ys), max(box[2], *xs), max(box[3], *ys)]
    return {"length": length, "area": area, "box": box}


def main(folder):
    all_figures = {}
    for release in RELEASES:
        doc = ezdxf.new(release)
        doc.header["$INSUNITS"] = 4
        common(doc)
        if release != "R12":
            later(doc)
        doc.saveas(f"{folder}/shapes-{release}.dxf")
        by_layer = {}
        for entity in doc.modelspace():
            by_layer.setdefault(entity.dxf.layer, []).append(entity)
        all_figures[release] = {layer: figures(parts) for layer, parts in by_layer.items()}
    with open(f"{folder}/figures.json", "w", encoding="utf-8") as out:
        json.dump({"version": ezdxf.__version__, "figures": all_figures}, out)


main(sys.argv[1])
