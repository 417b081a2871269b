"""Reads the calendar file that `cargo test --test native calendar` wrote with the icalendar package, and compares every event
with what went in. It writes nothing, with or without --check.

In: tmp/calendar.ics and tmp/calendar.jsonl in cargo's target folder.
"""

import json
import os
import sys
from pathlib import Path

from icalendar import Calendar

FOLDER = Path(os.environ.get("CARGO_TARGET_DIR", Path(__file__).resolve().parents[3] / "target")) / "tmp"


def read(event):
    """The event as the package understands it, in the words of the other file."""

    def text(name):
        return str(event[name]) if name in event else None

    return {
        "uid": text("UID"),
        "sequence": int(event["SEQUENCE"]),
        "title": text("SUMMARY"),
        "place": text("LOCATION"),
        "about": text("DESCRIPTION"),
        "starts": event.decoded("DTSTART").isoformat(),
        "ends": event.decoded("DTEND").isoformat(),
        "status": text("STATUS"),
        "alarms": len([part for part in event.subcomponents if part.name == "VALARM"]),
    }


def main():
    if not (FOLDER / "calendar.ics").exists():
        sys.exit(f"there is no calendar.ics in {FOLDER}: run cargo test --test native calendar first")
    found = Calendar.from_ical((FOLDER / "calendar.ics").read_bytes())
    events = [part for part in found.subcomponents if part.name == "VEVENT"]
    expected = [json.loads(line) for line in (FOLDER / "calendar.jsonl").read_text(encoding="utf-8").splitlines()]
    assert len(events) == len(expected) == 10_000, (len(events), len(expected))
    for event, line in zip(events, expected):
        assert not event.errors, event.errors
        ours = read(event)
        assert ours == line, (ours, line)
    print(f"calendar: {len(events)} events as the icalendar package reads them")


main()
