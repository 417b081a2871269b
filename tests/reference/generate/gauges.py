"""Writes the reference rows for the screen gauge: screens, eyes and things drawn at random by numpy.

    python tests/reference/generate/gauges.py            writes the rows
    python tests/reference/generate/gauges.py --check    writes nothing; fails if a committed file differs

Out: tests/reference/gauge-screen.csv   the mean size round the inside and its spread over 200,000 draws each

No formula of errors is used: a thing has some true width, an eye sets its patch a little wrong on whole pixels of the
screen, then sets a circle a little wrong for a ring; what comes out is counted.
"""

import numpy as np

from shared.rows import number, run, sourced

THINGS = {"card-short": (53.98, 0.06), "card-long": (85.60, 0.13), "euro-2": (25.75, 0.1), "pence-10": (24.5, 0.1)}
EYE = 0.1
DRAWS = 200_000


def rows():
    yield "thing,span,ratio,circle,round,u"
    dice = np.random.default_rng(20261125)
    for code, (across, off) in THINGS.items():
        for ratio, pixels_per_inch in ((1.0, 96), (1.5, 110), (2.0, 150), (2.625, 145), (3.0, 153), (3.0, 163), (4.0, 140)):
            per_mm = pixels_per_inch / 25.4
            span = round(across * per_mm, 3)
            ring = float(dice.uniform(14, 22))
            circle = round(ring * per_mm, 3)
            pixel = 1 / (per_mm * ratio)

            def set_to(true):
                """What somebody sets for a true width, in mm: by eye, and a pixel of the screen either way."""
                return true + dice.normal(0, EYE, DRAWS) + dice.uniform(-pixel, pixel, DRAWS)

            thing = across + dice.uniform(-off, off, DRAWS)
            set_span = set_to(thing) * per_mm
            size = np.pi * set_to(ring) * per_mm * across / set_span
            yield f"{code},{span},{ratio},{circle},{number(np.pi * circle * across / span, 4)},{number(np.std(size), 4)}"


SOURCE = "numpy.random: screens, eyes and things drawn at random, 200,000 each"
MAY_DIFFER = {"round": "0.0001", "u": "0.0001"}  # the last digit, which rounding may move


if __name__ == "__main__":
    run(__doc__, [("gauge-screen.csv", sourced(SOURCE, "gauges.py", rows()), MAY_DIFFER)])
