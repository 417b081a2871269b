"""Judges books, one JSON text a line on standard input, by public/book.schema.json.

Every book must pass, also when the schema is read as allowing nothing that it does not name; and a book with one part
spoilt must not, so that the schema is known to say something. Usage: books lines 1000 | check.py 1000
"""

import copy
import json
import random
import sys
from pathlib import Path

from jsonschema import Draft202012Validator

SCHEMA = json.loads((Path(__file__).parents[2] / "public/book.schema.json").read_text())


def tightened(schema):
    """The same schema, with no keys but those that it names."""
    if isinstance(schema, list):
        return [tightened(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    tight = {key: tightened(part) for key, part in schema.items()}
    if schema.get("type") == "object" and "properties" in schema:
        tight["additionalProperties"] = False
    return tight


def spoilt(book, rng):
    """The book with one part of its first change, or of its header, made wrong; none if it has no change."""
    book = copy.deepcopy(book)
    changes = [change for record in book["records"] for change in record["changes"] if change["sets"]]
    if not changes:
        return None
    change = rng.choice(changes)
    first = change["sets"][0]
    ways = [
        lambda: book.pop("by"),
        lambda: book.update(kind="a list"),
        lambda: book.update(schema="2.0"),
        lambda: book["records"][0].update(id="7"),
        lambda: book["records"][0].pop("changes"),
        lambda: change.update(n=0),
        lambda: change.update(by=change["by"].upper() + "0"),
        lambda: change.update(at="yesterday"),
        lambda: first.update(field="moon"),
        lambda: first.update(value=[{"no": "value"}]),
        lambda: first.update(replaces=[{"n": 1}]),
    ]
    rng.choice(ways)()
    return book


def main():
    wanted = int(sys.argv[1])
    Draft202012Validator.check_schema(SCHEMA)
    strict = Draft202012Validator(tightened(SCHEMA))
    rng = random.Random(7)
    books = refused = 0
    for line in sys.stdin:
        book = json.loads(line)
        books += 1
        error = next(strict.iter_errors(book), None)
        if error:
            sys.exit(f"book {books} is not as the schema says: {error.message[:400]} at {list(error.absolute_path)}")
        if books % 50 == 0 and (wrong := spoilt(book, rng)) is not None:
            refused += 1
            if strict.is_valid(wrong):
                sys.exit(f"book {books}, spoilt, is as the schema says: {json.dumps(wrong)[:400]}")
    if books != wanted or not refused:
        sys.exit(f"{books} books came, {wanted} were to come, {refused} were spoilt")
    for sample in Path(__file__).parents[1].glob("reference/book-*.json"):
        strict.validate(json.loads(sample.read_text()))
    print(f"schema: {books} generated books are as it says, {refused} spoilt ones are not")


main()
