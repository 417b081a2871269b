"""Writes the reference rows for sizes: every size of every scale, and how people may type them.

    python tests/reference/generate/sizes.py            writes the rows
    python tests/reference/generate/sizes.py --check    writes nothing; fails if a committed file differs

Out: tests/reference/sizes-all.csv     every size with its circumference, in decimals of thirty digits
     tests/reference/sizes-typed.csv   texts from a grammar (system x separator x fraction x case x script), each with
                                       every size that it may mean: system:quarters, or system:millimetres
"""

import random
from decimal import Decimal, getcontext
from fractions import Fraction

from shared.rows import run, sourced

getcontext().prec = 30
PI = Decimal("3.14159265358979323846264338328")
LEAST, MOST = 36, 80


def number(value):
    return Decimal(value.numerator) / Decimal(value.denominator)


# What a size measures round the inside: the trade's own formulas, each with its source in src/trade/sizing/systems.rs.
SCALES = {  # the finest step, the first size, and the circumference
    "uk": (Fraction(1, 4), 0, lambda n: Decimal("37.5") + Decimal("1.25") * number(n)),
    "us": (Fraction(1, 4), 0, lambda n: PI * Decimal("25.4") * (Decimal("0.458") + Decimal("0.032") * number(n))),
    "iso": (Fraction(1, 2), 0, number),
    "japan": (Fraction(1, 2), 1, lambda n: PI * (13 + (number(n) - 1) / 3)),
    "italy": (Fraction(1, 4), 0, lambda n: number(n) + 40),
}


def exists(system, n):
    step, first, measures = SCALES[system]
    return n % step == 0 and n >= first and LEAST <= measures(n) <= MOST


def all_sizes():
    yield "system,quarters,circumference"
    for system, (_, _, measures) in SCALES.items():
        for quarters in range(0, 400):
            n = Fraction(quarters, 4)
            if exists(system, n):
                yield f"{system},{quarters},{measures(n):.9f}"


NAMES = {
    "uk": ["UK", "Ireland", "Australia"],
    "us": ["US", "USA", "Canada"],
    "iso": ["ISO"],
    "japan": ["Japan", "JP"],
    "italy": ["Italy", "IT", "Swiss"],
}
FRACTIONS = {
    Fraction(0): [""],
    Fraction(1, 4): ["¼", " 1/4", ".25", ",25", " ¼"],
    Fraction(1, 2): ["½", " 1/2", ".5", ",5", " ½", ".50"],
    Fraction(3, 4): ["¾", " 3/4", ".75", ",75"],
}
SCRIPTS = {
    "plain": lambda text: text,
    "full width": lambda text: "".join(chr(ord(c) + 0xFEE0) if "!" <= c <= "~" else c for c in text),
    "Arabic": lambda text: "".join(chr(0x660 + int(c)) if c in "0123456789" else c for c in text),
    "Persian": lambda text: "".join(chr(0x6F0 + int(c)) if c in "0123456789" else c for c in text),
    "Devanagari": lambda text: "".join(chr(0x966 + int(c)) if c in "0123456789" else c for c in text),
}
CASES = [str, str.lower, str.upper, str.title]


def bare(n):
    """Every size and length that a number alone may mean."""
    found = [f"{system}:{n * 4}" for system in ["us", "iso", "japan", "italy"] if exists(system, n)]
    if LEAST <= PI * number(n) <= MOST:
        found.append(f"diameter:{float(n)}")
    # The ISO number is the circumference: once is enough.
    if LEAST <= n <= MOST and not exists("iso", n):
        found.append(f"circumference:{float(n)}")
    return found


def letter(whole):
    return chr(ord("A") + whole) if whole < 26 else f"Z+{whole - 25}"


def typed():
    yield "text,meanings"
    dice = random.Random("how people type sizes")
    seen = set()
    while len(seen) < 4000:
        system = dice.choice(list(SCALES))
        step, _, _ = SCALES[system]
        n = Fraction(dice.randrange(0, 320), 4)
        if not exists(system, n):
            continue
        whole, part = n.numerator // n.denominator, n - n.numerator // n.denominator
        digits = letter(whole) if system == "uk" else str(whole)
        text = digits + dice.choice(FRACTIONS[part])
        named = dice.choice([True, False])
        if named:
            name, separator = dice.choice(NAMES[system]), dice.choice([" ", ": ", "  ", "\u00a0"])
            text = f"{name}{separator}{text}" if dice.random() < 0.7 else f"{text} {name}"
        text = dice.choice(CASES)(text)
        text = dice.choice(list(SCRIPTS.values()))(text)
        meanings = [f"{system}:{n * 4}"] if named or system == "uk" else bare(n)
        row = f"{text.replace(',', '‚')},{' '.join(sorted(meanings))}"
        if row not in seen:
            seen.add(row)
            yield row


FILES = [  # whole numbers and decimals of thirty digits: the same everywhere, to the letter
    ("sizes-all.csv", "the scales' own formulas in decimals of thirty digits", all_sizes),
    ("sizes-typed.csv", "a grammar of how sizes are typed, with every meaning; a low comma stands for a comma", typed),
]


if __name__ == "__main__":
    run(__doc__, ((name, sourced(source, "sizes.py", rows()), {}) for name, source, rows in FILES))
