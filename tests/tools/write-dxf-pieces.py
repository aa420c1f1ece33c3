"""Writes invented pieces of a saddle bag as ASTM D6673 describes a file of pieces (layers and texts from memory).

Usage: write-dxf-pieces.py FILE METRIC|ENGLISH. One block a piece about its own origin, so that the pieces lie one over
the other. R12, which has no unit in its header.
"""
import sys

import ezdxf

MM = {"METRIC": 1.0, "ENGLISH": 1 / 25.4}


def piece(doc, name, texts, scale):
    block = doc.blocks.new(name)
    for i, text in enumerate(texts):
        block.add_text(text, dxfattribs={"layer": "1", "height": 3 * scale, "insert": (0, -5 * i * scale)})
    return block


def line(block, layer, points, scale, close=False):
    scaled = [(x * scale, y * scale) for x, y in points]
    block.add_polyline2d(scaled, close=close, dxfattribs={"layer": layer})


def front(doc, size, width, scale):
    texts = ["Piece Name: FRONT", f"Size: {size}", "Quantity: 1,1", "Material: BODY", "Category: OUTSIDE", "Annotation: SKIVE TOP"]
    block = piece(doc, f"FRONT_{size}", texts, scale)
    ring = [(0, 0), (width, 0), (width, 80), (0, 80)]
    line(block, "1", [*ring, ring[0]], scale)
    for x, y in ring:
        block.add_point((x * scale, y * scale), dxfattribs={"layer": "2"})
    block.add_point((width / 2 * scale, 0), dxfattribs={"layer": "3"})
    block.add_point((width / 2 * scale, 80 * scale), dxfattribs={"layer": "4"})
    block.add_line((0, 40 * scale), (4 * scale, 40 * scale), dxfattribs={"layer": "4"})
    line(block, "7", [(20, 20), (20, 60)], scale)
    line(block, "8", [(30, 20), (60, 20), (60, 40), (30, 40)], scale, close=True)
    line(block, "11", [(width - 30, 20), (width - 10, 20), (width - 10, 40), (width - 30, 40)], scale, close=True)
    block.add_point((40 * scale, 60 * scale), dxfattribs={"layer": "13"})
    block.add_circle((60 * scale, 60 * scale), 2 * scale, dxfattribs={"layer": "13"})
    line(block, "14", [(5, 5), (width - 5, 5)], scale)
    line(block, "84", [(0, 1), (width, 1)], scale)
    return block


def strap(doc, scale):
    block = piece(doc, "STRAP", ["Piece Name: STRAP", "Size: M", "Quantity: 2", "Material: STRAP BUTT"], scale)
    line(block, "1", [(0, 0), (150, 0), (150, 25), (0, 25)], scale, close=True)
    return block


def main(file, units):
    scale = MM[units]
    doc = ezdxf.new("R12")
    msp = doc.modelspace()
    for i, text in enumerate(["Style Name: SADDLE BAG", "Sample Size: M", f"Units: {units}", "Grading Rule Table: NONE"]):
        msp.add_text(text, dxfattribs={"layer": "1", "insert": (0, -200 - 5 * i), "height": 3})
    for block in (front(doc, "M", 100, scale), front(doc, "L", 110, scale), strap(doc, scale)):
        msp.add_blockref(block.name, (0, 0), dxfattribs={"layer": "1"})
    doc.saveas(file)


main(sys.argv[1], sys.argv[2])
