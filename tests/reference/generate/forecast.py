"""Writes the reference rows for the distribution of dates: what numpy and plain enumeration say about the same steps.

    python tests/reference/generate/forecast.py            writes the rows
    python tests/reference/generate/forecast.py --check    writes nothing; fails if a committed file differs

Out: tests/reference/forecast-one-calendar.csv     numpy.convolve of the steps, busday_offset of their sums
     tests/reference/forecast-many-calendars.csv   every combination of lengths, one by one, in whole fractions
     tests/reference/forecast-busy-months.csv      the same with a season that is busy in some months, worked day by day
"""

import functools
import itertools
import math
import random
from datetime import date, timedelta
from fractions import Fraction

import numpy

from dates import REGIONS, library
from shared.rows import number, run

SHARES = (50, 80, 95)
# Monday first. Workshop, assay office, courier.
WEEKS = ("1111100", "0111110", "1111110")


def triangle(least, usual, most):
    """Weights of least to most: nought one day outside, one at the usual, straight between."""
    weights = numpy.interp(numpy.arange(least, most + 1), [least - 1, usual, most + 1], [0, 1, 0])
    return weights / weights.sum()


def fractions(least, usual, most):
    """The same in whole fractions."""
    rise, fall = usual - least + 1, most - usual + 1
    weights = [Fraction(n, rise) for n in range(1, rise + 1)] + [Fraction(n, fall) for n in range(fall - 1, 0, -1)]
    return [weight / sum(weights) for weight in weights]


def longer(spread, by):
    return tuple(math.ceil(Fraction(days * (100 + by), 100)) for days in spread)


def a_spread(dice, most):
    return tuple(sorted(dice.randrange(most) for _ in range(3)))


def calendar(region, week, shut):
    years = range(2026, 2032)
    days = [day for day in library(region, years)] if shut else []
    return numpy.busdaycalendar(weekmask=week, holidays=sorted(days))


def a_season(dice):
    chance = dice.choice((0, 0, 20, 50, 100))
    return chance, dice.choice((25, 50, 100)) if chance else 0


def written(spreads):
    return " ".join("/".join(str(days) for days in spread) for spread in spreads)


def one_calendar():
    dice = random.Random("steps on one calendar")
    yield "# Source: numpy.convolve on triangular weights (numpy.interp) and numpy.busday_offset, holidays of PyPI holidays."
    yield "# by: a day, and the chance of being finished by then; ready: the first days with 50, 80 and 95 %."
    yield "region,week,from,steps,busy,longer,by,chance,ready50,ready80,ready95"
    for at in range(400):
        region = list(REGIONS)[at % 3]
        week = WEEKS[at % 2]
        days = calendar(region, week, True)
        start = date(2027, 1, 1) + timedelta(dice.randrange(700))
        spreads = [a_spread(dice, 40 if at % 4 else 9) for _ in range(1 + at % 6)]
        busy, by_share = a_season(dice)
        odds = {}
        for share, season in ((100 - busy, spreads), (busy, [longer(spread, by_share) for spread in spreads])):
            sums, least = numpy.ones(1), 0
            for spread in season:
                sums, least = numpy.convolve(sums, triangle(*spread)), least + spread[0]
            for more, weight in enumerate(sums):
                day = numpy.busday_offset(start, least + more, roll="forward", busdaycal=days).item()
                odds[day] = odds.get(day, 0) + weight * share / 100
        odds = {day: weight for day, weight in odds.items() if weight > 0}
        by = min(odds) + (max(odds) - min(odds)) * dice.random()
        yield row(region, week, start, written(spreads), busy, by_share, by, odds, 1e-9)


def many_calendars():
    dice = random.Random("steps on many calendars")
    yield "# Source: every combination of lengths, one by one, in Python's fractions; numpy.busday_offset a step; holidays of"
    yield "# PyPI holidays. Each step has its place: w, a, c with the weeks 1111100, 0111110 and 1111110; the courier works on"
    yield "# holidays. The order day before `by`: the last one of the workshop's working days with that chance at least."
    yield "region,places,from,steps,busy,longer,by,chance,ready50,ready80,ready95,wanted,order"
    for at in range(120):
        region = list(REGIONS)[at % 3]
        days = [calendar(region, WEEKS[0], True), calendar(region, WEEKS[1], True), calendar(region, WEEKS[2], False)]
        start = date(2027, 3, 1) + timedelta(dice.randrange(700))
        count = 1 + at % 4
        places = [dice.randrange(3) for _ in range(count)]
        spreads = [a_spread(dice, 7) for _ in range(count)]
        busy, by_share = a_season(dice)
        ways = []
        for share, season in ((100 - busy, spreads), (busy, [longer(spread, by_share) for spread in spreads])):
            if share:
                parts = [list(zip(range(spread[0], spread[2] + 1), fractions(*spread))) for spread in season]
                for lengths in itertools.product(*parts):
                    weight = Fraction(share, 100) * math.prod(weight for _, weight in lengths)
                    ways.append(([length for length, _ in lengths], weight))

        @functools.cache
        def end_of(day, place, length):
            return numpy.busday_offset(day, length, roll="forward", busdaycal=days[place]).item()

        def finishes(day):
            odds = {}
            for lengths, weight in ways:
                end = day
                for place, length in zip(places, lengths):
                    end = end_of(end, place, length)
                odds[end] = odds.get(end, 0) + weight
            return odds

        odds = finishes(start)
        by = min(odds) + (max(odds) - min(odds)) * dice.random()
        wanted = dice.choice((50, 80, 90, 95, 99, 100))
        order = numpy.busday_offset(by, 0, roll="backward", busdaycal=days[0]).item()
        while sum(weight for end, weight in finishes(order).items() if end <= by) * 100 < wanted:
            order = numpy.busday_offset(order, -1, roll="backward", busdaycal=days[0]).item()
        line = row(region, "".join("wac"[place] for place in places), start, written(spreads), busy, by_share, by, odds, 0)
        yield f"{line},{wanted},{order}"


def by_rank(spread, season):
    """Usual and busy lengths of the same rank, with the chance of each pair: both are read off at the same height."""
    ends = []
    for least, usual, most in (spread, season):
        shares = itertools.accumulate(fractions(least, usual, most))
        ends.append([(end, least + more) for more, end in enumerate(shares)])
    heights = sorted({end for side in ends for end, _ in side})
    pairs = []
    for low, high in zip([Fraction(0), *heights], heights):
        usual, busy = (next(length for end, length in side if end > low) for side in ends)
        pairs.append((usual, busy, high - low))
    return pairs


def worked(day, usual, busy, months, days):
    """The day on which a step is finished that is worked day by day, a share of it each day."""
    done = Fraction(0)
    day = numpy.busday_offset(day, 0, roll="forward", busdaycal=days).item()
    while done < 1:
        length = busy if day.month in months else usual
        if length == 0:
            break
        done += Fraction(1, length)
        day = numpy.busday_offset(day, 1, roll="forward", busdaycal=days).item()
    return day


def busy_months():
    dice = random.Random("some months are busy")
    yield "# Source: every combination of lengths, one by one, in Python's fractions; each step worked day by day, a busy day"
    yield "# a share of the busy length, another a share of the usual length of the same rank; numpy.busday_offset; holidays"
    yield "# of PyPI holidays. Places and order day as in forecast-many-calendars.csv. Months: their numbers."
    yield "region,places,from,steps,busy,longer,months,by,chance,ready50,ready80,ready95,wanted,order"
    for at in range(100):
        region = list(REGIONS)[at % 3]
        days = [calendar(region, WEEKS[0], True), calendar(region, WEEKS[1], True), calendar(region, WEEKS[2], False)]
        start = date(2027, 3, 1) + timedelta(dice.randrange(700))
        count = 1 + at % 3
        places = [dice.randrange(3) for _ in range(count)]
        spreads = [a_spread(dice, 7) for _ in range(count)]
        busy, by_share = dice.choice((20, 50, 100)), dice.choice((25, 50, 100, 200))
        # Most of them end or begin while the work goes on.
        months = sorted({(start.month + dice.randrange(-1, 3) - 1) % 12 + 1 for _ in range(1 + at % 2)})
        usual = [[(length, length, weight) for length, weight in zip(range(s[0], s[2] + 1), fractions(*s))] for s in spreads]
        ways = []
        for share, steps in ((100 - busy, usual), (busy, [by_rank(s, longer(s, by_share)) for s in spreads])):
            for lengths in itertools.product(*steps) if share else ():
                weight = Fraction(share, 100) * math.prod(weight for _, _, weight in lengths)
                ways.append(([length[:2] for length in lengths], weight))

        @functools.cache
        def end_of(day, place, pair):
            return worked(day, *pair, months, days[place])

        def finishes(day):
            odds = {}
            for lengths, weight in ways:
                end = day
                for place, pair in zip(places, lengths):
                    end = end_of(end, place, pair)
                odds[end] = odds.get(end, 0) + weight
            return odds

        odds = finishes(start)
        by = min(odds) + (max(odds) - min(odds)) * dice.random()
        wanted = dice.choice((50, 80, 90, 95, 99, 100))
        order = numpy.busday_offset(by, 0, roll="backward", busdaycal=days[0]).item()
        while sum(weight for end, weight in finishes(order).items() if end <= by) * 100 < wanted:
            order = numpy.busday_offset(order, -1, roll="backward", busdaycal=days[0]).item()
        season = f"{by_share},{' '.join(map(str, months))}"
        line = row(region, "".join("wac"[place] for place in places), start, written(spreads), busy, season, by, odds, 0)
        yield f"{line},{wanted},{order}"


def row(region, where, start, steps, busy, by_share, by, odds, slack):
    chance = sum(weight for day, weight in odds.items() if day <= by)
    ready = []
    for share in SHARES:
        total = 0
        for day in sorted(odds):
            total += odds[day]
            if total * 100 >= share - slack:
                ready.append(day)
                break
    return f"{region},{where},{start},{steps},{busy},{by_share},{by},{number(chance, 12)},{ready[0]},{ready[1]},{ready[2]}"


# Chances are sums of products: their last bits follow the processor. Days are days.
MAY_DIFFER = {"chance": "0.000000000001"}


if __name__ == "__main__":
    run(__doc__, [
        ("forecast-one-calendar.csv", one_calendar(), MAY_DIFFER),
        ("forecast-many-calendars.csv", many_calendars(), MAY_DIFFER),
        ("forecast-busy-months.csv", busy_months(), MAY_DIFFER),
    ])
