"""Writes the reference rows for dates: what numpy, python-dateutil and holidays say about the same days.

    python tests/reference/generate/dates.py            writes the rows
    python tests/reference/generate/dates.py --check    writes nothing; fails if a committed file differs

In:  tests/reference/bank-holidays-*.csv (GOV.UK) and one-off-holidays.csv.
Out: tests/reference/working-days-*.csv       numpy busday_count and busday_offset on those lists
     tests/reference/easter-1900-2199.csv     dateutil.easter
     tests/reference/holidays-library-*.csv   the holidays package, the weekend days included
     tests/reference/working-days-sums.csv    numpy busday_count and busday_offset on 100,000 random triples, summed
"""

import csv
import random
from datetime import date, timedelta

import holidays
import numpy
from dateutil.easter import easter

from shared.rows import HERE, run

REGIONS = {  # our file name: (the package's subdivision, how one-off-holidays.csv names it alone)
    "england-and-wales": ("ENG", "England and Wales only"),
    "scotland": ("SCT", "Scotland only"),
    "northern-ireland": ("NIR", "Northern Ireland only"),
}
# The regions that GOV.UK has no list of: country and subdivision in the package, and the category of the days that
# depend on the employer or the parish.
OTHERS = {
    "ireland": ("IE", None, None),
    "united-states": ("US", None, None),
    "france": ("FR", None, None),
    "netherlands": ("NL", None, "optional"),
    **{f"de-{land.lower()}": ("DE", land, "catholic" if land == "BY" else None)
       for land in "BW BY BE BB HB HH HE NI MV NW RP SL SN ST SH TH".split()},
}
# Good Friday is no day off by law in the Netherlands; the package lists it among the days that are.
NL_GOOD_FRIDAY = "Good Friday"
FIRST, LAST = 2012, 2028
LIBRARY_TO = 2041
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


def other_days(region, year):
    """The days off of a region, and those that are so only for some; Good Friday in the Netherlands is one of these."""
    country, land, category = OTHERS[region]
    named = dict(subdiv=land, years=year, language="en_US")
    always = holidays.country_holidays(country, **named)
    always = {day: name for day, name in always.items() if day.year == year}
    some = set()
    if category:
        some = {day for day in holidays.country_holidays(country, categories=(category,), **named) if day not in always}
    if country == "NL":
        some |= {day for day, name in always.items() if name == NL_GOOD_FRIDAY}
    return sorted(set(always) - some), sorted(some)


def others():
    yield f"# Source: PyPI holidays {holidays.__version__}; by choice: the categories optional (Netherlands) and catholic"
    yield "# (Bavaria), and Good Friday in the Netherlands. Month and day of each. Written by generate/dates.py."
    yield "region,year,days,by choice"
    for region in OTHERS:
        for year in range(FIRST, LIBRARY_TO + 1):
            days = [" ".join(f"{day:%m%d}" for day in part) for part in other_days(region, year)]
            yield f"{region},{year},{days[0]},{days[1]}"


def random_numbers(seed):
    """Knuth's MMIX generator, the upper half of each number: the test draws the same triples."""
    state = seed
    while True:
        state = (state * 6364136223846793005 + 1442695040888963407) % 2**64
        yield state >> 32


def working_day_sums():
    yield "# Source: numpy.busday_count and busday_offset (rolled forward, and backward by as much) on the days of the"
    yield "# holidays package, 100 triples a row, drawn from the seed as in tests/native/dates.rs; days as numbers from 1970 on,"
    yield "# summed. Written by generate/dates.py."
    yield "region,seed,weekmask,count,forward,back"
    regions = [*REGIONS, *OTHERS]
    first = date(FIRST + 1, 1, 1)
    span = (date(LIBRARY_TO - 3, 12, 31) - first).days + 1
    epoch = date(1970, 1, 1)
    closed = {}
    for seed in range(1000):
        region = regions[seed % len(regions)]
        if region not in closed:
            years = range(FIRST, LIBRARY_TO + 1)
            days = (sum((other_days(region, year)[0] for year in years), [])
                    if region in OTHERS else library(region, years))
            closed[region] = sorted(days)
        dice = random_numbers(seed)
        mask = next(dice) % 127 + 1
        weekmask = "".join("01"[mask >> bit & 1] for bit in range(7))
        calendar = numpy.busdaycalendar(weekmask=weekmask, holidays=closed[region])
        sums = [0, 0, 0]
        for _ in range(100):
            start = first + timedelta(next(dice) % span)
            end = start + timedelta(next(dice) % 500)
            days = next(dice) % 40
            sums[0] += int(numpy.busday_count(start, end, busdaycal=calendar))
            for at, sign, roll in ((1, 1, "forward"), (2, -1, "backward")):
                day = numpy.busday_offset(start, sign * days, roll=roll, busdaycal=calendar).item()
                sums[at] += (day - epoch).days
        yield f"{region},{seed},{weekmask},{sums[0]},{sums[1]},{sums[2]}"


def outputs():
    """Days, names and whole numbers: the same everywhere, to the letter."""
    yield "holidays-library-others.csv", others(), {}
    yield "working-days-sums.csv", working_day_sums(), {}
    yield "easter-1900-2199.csv", easters(), {}
    for region in REGIONS:
        yield f"working-days-{region}.csv", working_days(region), {}
        yield f"holidays-library-{region}.csv", library_days(region), {}


if __name__ == "__main__":
    run(__doc__, outputs())
