"""What the generators of rows have in common: writing their files, or comparing them with what is committed.

Rows are compared by value: in a column that has a tolerance every number may differ by that much, because the last bits
of libraries follow the processor; everything else is the same to the letter. No number is a negative nought.
"""

import re
import sys
from decimal import Decimal
from itertools import zip_longest
from pathlib import Path

HERE = Path(__file__).resolve().parent.parent.parent
NEGATIVE_NOUGHT = re.compile(r"(?<![\w.])-0(\.0*)?(?![\w.])")


def number(value, digits):
    """A number with so many digits after the point; what rounds to nought has no sign."""
    return f"{round(float(value), digits) + 0.0:.{digits}f}"


def rounded(value, digits):
    """A number that goes into a case, with so many digits at most; nought has no sign."""
    return round(value, digits) + 0.0


def sourced(source, generator, rows):
    """The lines of a file that says in one line where its rows come from."""
    yield f"# Source: {source}. Written by generate/{generator}."
    yield from rows


def run(usage, files):
    """Writes each of `files`: (name, its lines, {column: tolerance}); with --check only compares."""
    if sys.argv[1:] not in ([], ["--check"]):
        sys.exit(usage)
    faults = []
    for name, lines, tolerances in files:
        made = list(lines)
        path = HERE / name
        if any(NEGATIVE_NOUGHT.search(line) for line in made):
            sys.exit(f"{name}: a negative nought would be written")
        if not sys.argv[1:]:
            path.write_text("\n".join(made) + "\n", encoding="utf-8", newline="\n")
            print(f"wrote {name}")
        elif not path.exists():
            faults.append(f"{name} is not there")
        else:
            faults += differing(name, path.read_bytes().decode(), made, tolerances)
    if faults:
        sys.exit("\n".join(faults[:20] + [f"... {len(faults)} in all"] * (len(faults) > 20)))


def differing(name, committed, made, tolerances):
    """Where a committed file is not what comes out, a sentence a cell."""
    if not committed.endswith("\n") or "\r" in committed:
        return [f"{name}: its lines do not end as they are written"]
    columns, faults = None, []
    for at, (theirs, ours) in enumerate(zip_longest(committed[:-1].split("\n"), made), 1):
        if theirs is None or ours is None:
            return faults + [f"{name}: {at - 1} lines are the same, one of both has more"]
        if NEGATIVE_NOUGHT.search(theirs):
            faults.append(f"{name}, line {at}: a negative nought is committed")
        if columns is None:
            if theirs != ours:
                return faults + [f"{name}, line {at}: {theirs!r} is committed, {ours!r} comes out"]
            if not ours.startswith("#"):
                columns = ours.split(",")
                assert tolerances.keys() <= set(columns), f"{name} has no such column"
            continue
        theirs, ours = theirs.split(","), ours.split(",")
        if len(theirs) != len(columns) or len(ours) != len(columns):
            faults.append(f"{name}, line {at}: {len(theirs)} cells of {len(columns)} are committed, {len(ours)} come out")
            continue
        for column, was, now in zip(columns, theirs, ours):
            if not same(was, now, tolerances.get(column)):
                faults.append(f"{name}, line {at}, {column}: {was!r} is committed, {now!r} comes out")
    return faults


def same(was, now, tolerance):
    """Whether two cells say the same: to the letter, or number for number within a tolerance."""
    if was == now or tolerance is None:
        return was == now
    was, now = was.split(), now.split()
    return len(was) == len(now) and all(
        abs(Decimal(a) - Decimal(b)) <= Decimal(tolerance) for a, b in zip(was, now)
    )
