"""Writes the reference rows for dates: what numpy, python-dateutil and holidays say about the same days.

    python tests/reference/generate/dates.py            writes the rows
    python tests/reference/generate/dates.py --check    writes nothing; fails if a committed file differs

In:  tests/reference/bank-holidays-*.csv (GOV.UK) and one-off-holidays.csv.
Out: tests/reference/working-days-*.csv       numpy busday_count and busday_offset on those lists
     tests/reference/easter-1900-2199.csv     dateutil.easter
     tests/reference/holidays-library-*.csv   the holidays package, the weekend days included
"""

import csv
import random
import sys
from datetime import date, timedelta
from pathlib import Path

import holidays
import numpy
from dateutil.easter import easter

HERE = Path(__file__).resolve().parent.parent
REGIONS = {  # our file name: (the package's subdivision, how one-off-holidays.csv names it alone)
    "england-and-wales": ("ENG", "England and Wales only"),
    "scotland": ("SCT", "Scotland only"),
    "northern-ireland": ("NIR", "Northern Ireland only"),
}
FIRST, LAST = 2012, 2028
LIBRARY_TO = 2040
PAIRS = 2000
# Monday first. The second week is that of a workshop that opens on Saturdays and rests on Mondays.
WEEKS = {"mon-fri": "1111100", "tue-sat": "0111110"}


def rows(name):
    with open(HERE / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def proclaimed(region):
    """The GOV.UK list, and the one-off days of the region that it lacks."""
    days = {date.fromisoformat(row["date"]) for row in rows(f"bank-holidays-{region}.csv")}
    places = {"UK", REGIONS[region][1]}
    for row in rows("one-off-holidays.csv"):
        day = date.fromisoformat(row["date"])
        if row["where"] in places and FIRST <= day.year <= LAST:
            days.add(day)
    return days


def library(region, years):
    return holidays.country_holidays("GB", subdiv=REGIONS[region][0], years=years)


def working_days(region):
    dice = random.Random(f"working days in {region}")
    listed = proclaimed(region)
    # On a Saturday worked, Christmas Day itself is closed as well as its substitute: the package names those days.
    weekends = {day for day in library(region, range(FIRST, LAST + 1)) if day.weekday() >= 5}
    calendars = {
        "mon-fri": sorted(listed),
        "tue-sat": sorted(listed | weekends),
    }
    yield "# Source: numpy.busday_count and busday_offset on the GOV.UK list and one-off-holidays.csv;"
    yield "# the week tue-sat also on the weekend days of the holidays package. Written by generate/dates.py."
    yield "week,from,to,count,days,forward,back"
    first, last = date(FIRST, 1, 1), date(LAST, 12, 31)
    written = 0
    while written < PAIRS:
        week = "tue-sat" if written % 4 == 3 else "mon-fri"
        calendar = numpy.busdaycalendar(weekmask=WEEKS[week], holidays=calendars[week])
        start = first + timedelta(dice.randrange((last - first).days + 1))
        end = start + timedelta(dice.randrange(400 if written % 2 else 40))
        days = dice.randrange(200 if written % 2 else 30)
        forward = numpy.busday_offset(start, days, roll="forward", busdaycal=calendar)
        back = numpy.busday_offset(start, -days, roll="backward", busdaycal=calendar)
        # Every answer stays inside the years that the lists cover.
        if max(end, forward.item()) <= last and back.item() >= first:
            count = numpy.busday_count(start, end, busdaycal=calendar)
            yield f"{week},{start},{end},{count},{days},{forward},{back}"
            written += 1


def easters():
    yield "# Source: python-dateutil, dateutil.easter.easter. Written by generate/dates.py."
    yield "easter"
    for year in range(1900, 2200):
        yield str(easter(year))


def library_days(region):
    yield f"# Source: PyPI holidays {holidays.__version__}, country GB, weekend days included. Written by generate/dates.py."
    yield "date,name"
    for day, name in sorted(library(region, range(1995, LIBRARY_TO + 1)).items()):
        yield f"{day},{name}"


def outputs():
    yield "easter-1900-2199.csv", easters()
    for region in REGIONS:
        yield f"working-days-{region}.csv", working_days(region)
        yield f"holidays-library-{region}.csv", library_days(region)


def main():
    check = sys.argv[1:] == ["--check"]
    if sys.argv[1:] and not check:
        sys.exit(__doc__)
    differing = []
    for name, lines in outputs():
        text = "\n".join(lines) + "\n"
        path = HERE / name
        if not check:
            path.write_text(text, encoding="utf-8", newline="\n")
            print(f"wrote {name}")
        elif not path.exists() or path.read_bytes() != text.encode():
            differing.append(name)
    if differing:
        sys.exit("differs from what the libraries say: " + ", ".join(differing))
    if check:
        print("date references: as the libraries say")


if __name__ == "__main__":
    main()
