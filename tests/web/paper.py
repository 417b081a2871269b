"""Measures a printed gauge: a PDF is rendered to a picture at 1,200 dots an inch, and ink is looked for in the picture.

    python tests/web/paper.py sheet.pdf A4|A6      writes what it found as JSON, in millimetres

Nothing of the app is used: lines, circles and strokes are found by where there is ink.
"""

import json
import sys

import numpy as np
import pypdfium2
from scipy.ndimage import find_objects, label

DPI = 1200
MM = 25.4 / DPI


def main(path, paper):
    pdf = pypdfium2.PdfDocument(path)
    grey = pdf[0].render(scale=DPI / 72, grayscale=True).to_numpy()
    grey = grey.reshape(grey.shape[0], grey.shape[1])
    ink = grey < 128
    parts, count = label(ink, structure=np.ones((3, 3)))
    boxes = [(part, box) for part, box in enumerate(find_objects(parts), 1)]
    size = lambda box: ((box[1].stop - box[1].start) * MM, (box[0].stop - box[0].start) * MM)  # noqa: E731
    found = {"pages": len(pdf)}

    # The line with its strokes is the one connected thing of about 100 mm.
    long = 0 if paper == "A4" else 1
    lines = [(part, box) for part, box in boxes if 90 < size(box)[long] < 110 and size(box)[1 - long] < 8]
    assert len(lines) == 1, f"{len(lines)} lines"
    found["line"] = round(between_end_strokes(parts, *lines[0], long), 3)

    # A circle is as high as it is wide, and hollow.
    circles = []
    for part, box in boxes:
        wide, high = size(box)
        if 12 < wide < 26 and abs(wide - high) < 0.1:
            inside = (parts[box] == part).sum() * MM * MM
            assert inside < 0.1 * wide * high, "hollow"
            circles.append((box[0].start, box[1].start, (wide + high) / 2))
    rows = sorted(circles)
    ordered = []
    while rows:
        row = [it for it in rows if it[0] - rows[0][0] < 3 / MM]
        rows = rows[len(row):]
        ordered += sorted(row, key=lambda it: it[1])
    found["circles"] = [round(across, 3) for *_, across in ordered]

    # A strip is a frame of 84 by 8 mm whose strokes hang from its upper edge.
    strips = [(part, box) for part, box in boxes if 83 < size(box)[0] < 86 and 7.5 < size(box)[1] < 8.8]
    assert len(strips) == 1, f"{len(strips)} strips"
    part, box = strips[0]
    frame = parts[box] == part
    # Half a millimetre below the frame: only strokes, and the frame's own sides.
    row = frame[int(0.55 / MM)]
    strokes = centres(row)
    found["strip"] = {"first": round((strokes[1] - strokes[0]) * MM, 3), "last": round((strokes[-2] - strokes[0]) * MM, 3)}

    if paper == "A4":
        cards = [size(box) for _, box in boxes if 80 < size(box)[0] < 90 and 50 < size(box)[1] < 58]
        assert len(cards) == 1, f"{len(cards)} cards"
        # From the middle of a stroke to the middle of the other: it is 0.2 mm wide.
        found["card"] = [round(side - 0.2, 3) for side in cards[0]]
    print(json.dumps(found))


def between_end_strokes(parts, part, box, axis):
    """From the middle of the first stroke across to the middle of the last one."""
    thing = (parts[box] == part) if axis == 0 else (parts[box] == part).T
    # Near the outer end of the long strokes there is nothing else.
    strokes = centres(thing[int(0.3 / MM)])
    return (strokes[-1] - strokes[0]) * MM


def centres(row):
    """The middles of the runs of ink in a row."""
    edges = np.flatnonzero(np.diff(np.concatenate([[0], row.astype(int), [0]])))
    return [(start + stop) / 2 for start, stop in zip(edges[::2], edges[1::2])]


if __name__ == "__main__":
    main(*sys.argv[1:])
