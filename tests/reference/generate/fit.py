"""Writes the reference rows for the fit: what numpy and scipy say about the same figures.

    python tests/reference/generate/fit.py            writes the rows
    python tests/reference/generate/fit.py --check    writes nothing; fails if a committed file differs

Out: tests/reference/fit-room-integrated.csv   scipy.integrate.quad over the width of a domed bore
     tests/reference/fit-combined.csv          readings, and numpy's generalised least squares of them
     tests/reference/fit-calibrated.csv        numpy.polyfit of the points of a gauge
     tests/reference/fit-learned.csv           numpy.linalg.solve of the normal equations, and scores left one out
"""

import random
from math import pi, sqrt

import numpy as np
from scipy.integrate import quad

from shared.rows import number, rounded, run, sourced


def room():
    """The mean relief of an arc of radius 16 mm and what it adds round the inside, by quadrature."""
    yield "width,relief,room"
    radius = 16.0
    for tenths in range(15, 62):
        w = tenths / 10
        half = w / 2
        stands_back = lambda x: radius - sqrt(radius * radius - x * x)  # noqa: E731
        mean = quad(stands_back, -half, half)[0] / w
        yield f"{w},{number(stands_back(half), 6)},{number(2 * pi * mean, 6)}"


K, ETA, READING, DAY = 0.25, 0.8, 0.35, 0.3
HANDS = {"cold": (0.5, 0.4), "normal": (0.0, 0.3), "warm": (-0.5, 0.4)}
SITS = {"tight": (0.625, 0.4), "right": (0.0, 0.2), "spins": (-0.625, 0.4), "summer": (0.3125, 0.4)}


def combined():
    """Cases of readings: each as `day:size:gauge width:step:own error:hands or sits`, with the mean and its error.

    The covariance of the readings is set up as a whole and inverted. Only how far days and worn rings lie from each other
    is asked of their own means; where that is more than their covariance without the hands allows, it stands for it.
    """
    yield "readings,mean,u,shares"
    dice = random.Random("readings of one finger")
    for _ in range(60):
        true = dice.uniform(45, 70)
        days = {}
        readings = []
        for _ in range(dice.randint(1, 6)):
            day = dice.randint(1, 3)
            how = days.setdefault(day, dice.choice(list(HANDS)))
            if dice.random() < 0.25:
                how, day = dice.choice(list(SITS)), 0
            width = dice.choice([2.0, 3.0, 4.5, 6.0])
            step = dice.choice([0.3125, 0.625, 1.25, 1.5])
            error = dice.choice([0.0, 0.1, 0.25])
            size = rounded(true + dice.gauss(0, 0.6), 2)
            readings.append((day, size, width, step, error, how))
        n = len(readings)
        shift = {**HANDS, **SITS}
        at = np.array([size + shift[how][0] + K * (3.0 - width) for _, size, width, _, _, how in readings])
        noise = np.zeros(n)
        for i, (day, *_, how) in enumerate(readings):
            mates = [j for j, other in enumerate(readings) if other[0] == day] if day else [i]
            spread = np.std(at[mates], ddof=1) if len(mates) > 1 else 0.0
            noise[i] = max([spread, READING] + [readings[j][3] / sqrt(12) for j in mates])
        own, held = np.diag(noise**2), np.zeros((n, n))
        for i, one in enumerate(readings):
            for j, other in enumerate(readings):
                hands = shift[one[5]][1] ** 2
                if i == j and one[0] == 0:
                    held[i, j] += hands
                elif one[0] == other[0] != 0:
                    own[i, j] += DAY**2
                    held[i, j] += hands
        ones = np.ones(n)
        weights = np.linalg.solve(own + held, ones)
        weights /= weights.sum()
        # A gauge's own error is the same in all of its readings, and weighs nobody down.
        gauges = np.array([[one[4] ** 2 if one[2:5] == other[2:5] else 0.0 for other in readings] for one in readings])
        groups = [[j for j in range(n) if readings[j][0] == day] for day in sorted(set(days)) if day]
        groups = [group for group in groups if group] + [[j] for j in range(n) if readings[j][0] == 0]
        shares = [weights[group].sum() for group in groups]
        means = [at[group].mean() for group in groups]
        between = np.average((np.array(means) - weights @ at) ** 2, weights=shares) / max(len(groups) - 1, 1)
        u = sqrt(max(weights @ own @ weights, between) + weights @ (held + gauges) @ weights)
        listed = " ".join(":".join(map(str, one)) for one in readings)
        yield f"{listed},{number(weights @ at, 5)},{number(u, 5)},{' '.join(number(weight * 100, 3) for weight in weights)}"


def calibrated():
    """Points of a gauge, `says:is`, with offset at their middle, slope and residuals."""
    yield "points,offset,slope,residuals"
    dice = random.Random("a gauge against callipers")
    for _ in range(30):
        off, slope = dice.uniform(-0.5, 0.5), dice.uniform(-0.02, 0.02)
        says = sorted(round(dice.uniform(40, 75), 2) for _ in range(dice.randint(2, 7)))
        points = [(x, rounded(x + off + slope * (x - 55) + dice.gauss(0, 0.05), 2)) for x in says]
        x = np.array([x for x, _ in points])
        y = np.array([y for _, y in points]) - x
        b, a = np.polyfit(x - x.mean(), y, 1)
        rest = y - (a + b * (x - x.mean()))
        listed = " ".join(f"{x}:{y}" for x, y in points)
        yield f"{listed},{number(a, 6)},{number(b, 8)},{' '.join(number(r, 6) for r in rest)}"


PRIOR = np.array([0.25, 0.8, 0.0])
PRIOR_SD = np.array([0.10, 0.30, 0.30])


def posterior(x, y, u):
    precision = np.diag(PRIOR_SD**-2) + (x.T / u**2) @ x
    mean = np.linalg.solve(precision, PRIOR / PRIOR_SD**2 + (x.T / u**2) @ y)
    return mean, np.sqrt(np.diag(np.linalg.inv(precision)))


def learned():
    """Bands that were worn, `apart:room:took:u`, with the three constants, their errors and the two scores."""
    yield "bands,k,eta,c,sd_k,sd_eta,sd_c,learned,customary"
    dice = random.Random("bands that were worn")
    for case in range(40):
        k, eta, c = dice.gauss(0.25, 0.1), dice.gauss(0.8, 0.3), dice.gauss(0, 0.3)
        bands = []
        for _ in range(dice.choice([0, 1, 2, 3, 5, 12, 40])):
            apart, room = rounded(dice.uniform(-2, 5), 2), rounded(dice.uniform(-0.3, 0.63), 3)
            u = rounded(dice.uniform(0.4, 0.8), 3)
            bands.append((apart, room, rounded(k * apart - eta * room + c + dice.gauss(0, u), 3), u))
        data = np.array(bands).reshape(-1, 4)
        x = np.column_stack([data[:, 0], -data[:, 1], np.ones(len(data))])
        y, u = data[:, 2], data[:, 3]
        mean, sd = posterior(x, y, u)
        scores = ","
        if len(bands) >= 3:
            others = [np.arange(len(bands)) != i for i in range(len(bands))]
            off = [y[i] - x[i] @ posterior(x[rest], y[rest], u[rest])[0] for i, rest in enumerate(others)]
            scores = f"{number(sqrt(np.mean(np.square(off))), 5)},{number(sqrt(np.mean((y - x @ PRIOR) ** 2)), 5)}"
        listed = " ".join(":".join(map(str, band)) for band in bands)
        yield f"{listed},{','.join(number(v, 5) for v in [*mean, *sd])},{scores}"


LAST = "0.00001"  # the last digit that is written of most columns: rounding may go either way
FILES = [  # name, what says the same, its rows, and by how much a column may differ
    ("fit-room-integrated.csv", "scipy.integrate.quad: the mean relief of an arc of radius 16 mm, times 2 pi", room,
     {"relief": "0.000001", "room": "0.000001"}),
    ("fit-combined.csv", "numpy: generalised least squares of readings, covariance inverted as a whole", combined,
     {"mean": LAST, "u": LAST, "shares": "0.001"}),
    ("fit-calibrated.csv", "numpy.polyfit: is - says over says, from its middle", calibrated,
     {"offset": "0.000001", "slope": "0.00000001", "residuals": "0.000001"}),
    ("fit-learned.csv", "numpy.linalg: normal equations with a normal prior; scores left one out", learned,
     dict.fromkeys(["k", "eta", "c", "sd_k", "sd_eta", "sd_c", "learned", "customary"], LAST)),
]


if __name__ == "__main__":
    run(__doc__, ((name, sourced(source, "fit.py", rows()), may) for name, source, rows, may in FILES))
