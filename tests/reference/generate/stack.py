"""Writes the reference rows for sections and for rings that lie beside a head: what shapely says about the same shapes.

    python tests/reference/generate/stack.py            writes the rows
    python tests/reference/generate/stack.py --check    writes nothing; fails if a committed file differs

Out: tests/reference/stack-flush.csv   1,000 random cases. A band is a polygon cut out by circles, a head is a box; the
                                       band is moved away, by halving, until shapely finds no common area any more.
"""

import random
from math import asin, cos, hypot, sin

from shapely.affinity import translate
from shapely.geometry import LineString, Polygon, box

from shared.rows import number, rounded, run

CASES = 1000
POINTS = 600
COLUMNS = (
    "profile width height dome relief area at half_width underside reach larger clearance apart "
    "next_width next_height next_apart"
).split()


def arc(width, rise, low, up):
    """Points of a circle over a chord: from left to right, `rise` from the chord to the crown at height `low`."""
    if rise == 0:
        return [(-width / 2, low), (width / 2, low)]
    # The circle through both ends of the chord and the crown, by the angle at its centre.
    radius = hypot(width / 2, rise) ** 2 / (2 * rise)
    half = asin(min(1.0, width / 2 / radius))
    angles = [half * (2 * i / POINTS - 1) for i in range(POINTS + 1)]
    crown = [(radius * sin(a), radius * (cos(a) - 1)) for a in angles]
    return [(x, low + (y if up else -y)) for x, y in crown]


def section(width, height, dome, relief):
    outside = arc(width, dome, height, True)
    inside = arc(width, relief, 0, False)
    return Polygon(outside + inside[::-1])


def half_width(shape, at):
    cut = shape.intersection(LineString([(-99, at), (99, at)]))
    return cut.length / 2


def first_free(obstacles, shape, start):
    """The least place of the left end of a shape, from `start` on, at which it has no area in common with any."""
    left = shape.bounds[0]

    def touches(at):
        moved = translate(shape, at - left)
        return any(moved.intersection(other).area > 1e-10 for other in obstacles)

    if not touches(start):
        return start
    low, high = start, start + 30
    for _ in range(48):
        middle = (low + high) / 2
        low, high = (middle, high) if touches(middle) else (low, middle)
    return high


def case(dice):
    profile = dice.choice(["flat", "d", "court", "flat-court"])
    width = round(dice.uniform(1.5, 8), 2)
    height = round(dice.uniform(1.2, 2.6), 2)
    most = min(width / 2, height / 2) * 0.9
    dome = round(dice.uniform(0.05, most), 2) if profile in ("d", "court") else 0.0
    relief = round(dice.uniform(0.02, min(0.4, most)), 2) if "court" in profile else 0.0
    shape = section(width, height, dome, relief)
    at = round(dice.uniform(relief + 0.01, height - 0.01), 2) if dice.random() < 0.8 else round(height - dome / 2, 3)
    underside = round(dice.uniform(0.6, 3.2), 2)
    reach = round(dice.uniform(0, 5), 2)
    larger = rounded(dice.uniform(-0.6, 0.6), 2)
    clearance = dice.choice([0.0, 0.1, 0.2, 0.3])
    needed = max(0.0, clearance - larger / 2)
    head = box(-9, underside - needed, reach, 40)
    # The side of the shank with the head is at nought.
    place = first_free([head], shape, 0.0)
    next_width = round(dice.uniform(1.5, 4), 2)
    next_height = round(dice.uniform(1.2, 3), 2)
    band = translate(shape, place - shape.bounds[0])
    over_next = box(-9, underside - clearance, reach, 40)
    further = first_free([over_next], box(0, 0, next_width, next_height), band.bounds[2])
    return {
        "profile": profile,
        "width": width,
        "height": height,
        "dome": dome,
        "relief": relief,
        "area": number(shape.area, 4),
        "at": at,
        "half_width": number(half_width(shape, at), 4),
        "underside": underside,
        "reach": reach,
        "larger": larger,
        "clearance": clearance,
        "apart": number(place, 4),
        "next_width": next_width,
        "next_height": next_height,
        "next_apart": number(further - band.bounds[2], 4),
    }


def rows():
    dice = random.Random("rings that lie beside a head")
    yield "# shapely 2.1, by tests/reference/generate/stack.py; millimetres"
    yield ",".join(COLUMNS)
    for _ in range(CASES):
        of = case(dice)
        yield ",".join(str(of[column]) for column in COLUMNS)


# The last digit, which rounding may move.
MAY_DIFFER = dict.fromkeys(["area", "half_width", "apart", "next_apart"], "0.0001")


if __name__ == "__main__":
    run(__doc__, [("stack-flush.csv", rows(), MAY_DIFFER)])
