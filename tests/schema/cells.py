"""Reads lines for a spreadsheet with Python's csv module: what went in comes out, and none of it is a formula.

Usage: books cells 1000 | cells.py 1000
"""

import csv
import io
import json
import re
import sys

TELEPHONE = re.compile(r"[+]?[0-9][0-9 ]*")


def main():
    lines = guarded = 0
    for text in sys.stdin:
        case = json.loads(text)
        read = list(csv.reader(io.StringIO(case["line"], newline=""), strict=True))
        if len(read) != 1 or len(read[0]) != len(case["cells"]):
            sys.exit(f"not one line of {len(case['cells'])} cells: {case}")
        for cell, given in zip(read[0], case["cells"]):
            spaced = TELEPHONE.fullmatch(given) and cell.replace(" ", "") == given.replace(" ", "")
            if cell not in (given, "'" + given) and not spaced:
                sys.exit(f"{given!r} became {cell!r}")
            guarded += cell != given
            begins = cell.lstrip()[:1]
            if begins in ("=", "-", "@") or (begins == "+" and not (TELEPHONE.fullmatch(cell) and " " in cell.strip())):
                sys.exit(f"{cell!r} would be worked out")
        lines += 1
    if lines != int(sys.argv[1]) or not guarded:
        sys.exit(f"{lines} lines came, {guarded} cells were guarded")
    print(f"spreadsheet: {lines} lines are read as they were meant, {guarded} cells guarded")


main()
