"""Areas and offsets of outlines by Shapely, to hold against our own.

Reads a JSON list from standard input, one shape each: its kind, its box and numbers, how far it is
grown, and our corners before and after, all in quanta of 1/16000 mm. Writes a JSON list of what
Shapely and plain formulas make of them, in millimetres and square millimetres.
"""

import json
import math
import sys

from shapely import Point, Polygon, box

QUANTA = 16000.0
# Chords per quarter turn of Shapely's own arcs: their area falls short by less than 3 in 10^8.
SEGMENTS = 4096


def ring(corners):
    return Polygon([(x / QUANTA, y / QUANTA) for x, y in corners])


def regular_area(sides, width, height):
    """A regular polygon with a level side, stretched to fill width and height."""
    turn = 2 * math.pi / sides
    at = [math.pi / 2 + turn / 2 + turn * k for k in range(sides)]
    across = max(map(math.cos, at)) - min(map(math.cos, at))
    down = max(map(math.sin, at)) - min(map(math.sin, at))
    return sides / 2 * math.sin(turn) * (width / across) * (height / down)


def arch(width, height, rise, by):
    """Straight sides below a disc, everything moved out by the same distance."""
    radius = (width * width / 4 + rise * rise) / (2 * rise)
    disc = Point(width / 2, radius).buffer(radius + by, quad_segs=SEGMENTS)
    strip = box(-by, -by, width + by, height + by)
    below = box(-by, radius, width + by, max(height + by, radius))
    return disc.union(below).intersection(strip)


def reference(shape, by):
    """The shape grown by a distance, drawn anew from its numbers or by Shapely's offset."""
    kind, width, height = shape["kind"], shape["width"] / QUANTA, shape["height"] / QUANTA
    if kind == "oval":
        # Its axes grow; that is the parallel curve only where it is a circle.
        disc = Point(0, 0).buffer(1, quad_segs=SEGMENTS)
        a, b = width / 2 + by, height / 2 + by
        return Polygon([(width / 2 + a * x, height / 2 + b * y) for x, y in disc.exterior.coords])
    if kind == "rounded":
        radius = shape["number"] / QUANTA
        core = box(radius, radius, width - radius, height - radius)
        return core.buffer(radius + by, quad_segs=SEGMENTS)
    if kind == "arch":
        return arch(width, height, shape["number"] / QUANTA, by)
    # Mitred joins keep edges parallel; the limit only cuts spikes far longer than any here.
    return ring(shape["corners"]).buffer(by, join_style="mitre", mitre_limit=100)


def formula(shape):
    """The area by a closed formula, where there is one."""
    kind, width, height = shape["kind"], shape["width"] / QUANTA, shape["height"] / QUANTA
    if kind == "oval":
        return math.pi * width * height / 4
    if kind == "rounded":
        radius = shape["number"] / QUANTA
        return width * height - (4 - math.pi) * radius * radius
    if kind == "arch":
        rise = shape["number"] / QUANTA
        radius = (width * width / 4 + rise * rise) / (2 * rise)
        half = math.asin(min(1.0, width / 2 / radius))
        segment = radius * radius * half - width / 2 * (radius - rise)
        return width * (height - rise) + segment
    if kind == "polygon":
        return regular_area(shape["sides"], width, height)
    if kind == "octagon":
        corner = shape["number"] / QUANTA
        return width * height - 2 * corner * corner
    return None


def judge(shape):
    by = shape["by"] / QUANTA
    ours, grown = ring(shape["corners"]), ring(shape["grown"])
    expected = reference(shape, by)
    # Our grown outline is measured from its own box, which starts outside the old one.
    moved = Polygon([(x - by, y - by) for x, y in grown.exterior.coords])
    return {
        "valid": ours.is_valid and grown.is_valid,
        "area": ours.area,
        "formula": formula(shape),
        "grown_area": grown.area,
        "grown_reference": expected.area,
        "grown_gap": moved.exterior.hausdorff_distance(expected.exterior),
    }


json.dump([judge(shape) for shape in json.load(sys.stdin)], sys.stdout)
