"""What the generators of rows have in common: writing their files, or comparing them with what is committed."""

import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent.parent.parent


def write(files, generator):
    """Writes each file of `files`, {name: (source, function that yields its lines)}; with --check only compares."""
    differ = []
    for name, (source, rows) in files.items():
        text = "\n".join([f"# Source: {source}. Written by generate/{generator}.", *rows()]) + "\n"
        if "--check" not in sys.argv:
            (HERE / name).write_text(text, encoding="utf-8")
        elif (HERE / name).read_text(encoding="utf-8") != text:
            differ.append(name)
    if differ:
        sys.exit(f"differ from what is committed: {', '.join(differ)}")
