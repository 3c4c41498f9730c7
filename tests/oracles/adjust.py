"""Random rooms adjusted by scipy's dense least squares; areas by shapely."""

import math
import random

import numpy
import scipy
import shapely
from scipy.optimize import least_squares
from shapely import Polygon

from fixture import main

NM = 25_400_000
SHAPES = {
    "rectangle": ("rrrr", lambda a, b, c, d, e: [a + b, c + d, a + b, c + d]),
    "ell": ("rrlrrr", lambda a, b, c, d, e: [a + b, c, b, d, a, c + d]),
    "tee": ("rrlrrlrr", lambda a, b, c, d, e: [a + b + c, d, c, e, b, e, a, d]),
}


def build():
    dice = random.Random(20261125)
    return {
        "by": f"scipy {scipy.__version__}, numpy {numpy.__version__}, shapely {shapely.__version__}",
        "rooms": [one(dice, list(SHAPES)[n % 3]) for n in range(24)],
        "houses": [house(dice, list(SHAPES)[n % 2], [0, 6, -3, 12][n % 4]) for n in range(12)],
    }


def one(dice, shape):
    letters, lengths = SHAPES[shape]
    nominal = walk(letters, lengths(*(dice.uniform(40, 120) for _ in range(5))))
    true = [(x + dice.gauss(0, 0.4), y + dice.gauss(0, 0.4)) for x, y in nominal]
    count = len(true)
    pairs = [(n, (n + 1) % count) for n in range(count)] + [(0, count // 2), (1, count // 2 + 1 if count > 4 else 3)]
    observations = [distance(dice, true, *pair) for pair in pairs]
    observations += [
        {"kind": "angle", "at": (n + 1) % count, "is": 90_000_000 if letter == "r" else -90_000_000, "sigma": 500_000}
        for n, letter in enumerate(letters)
    ]
    observations += aside(dice, true, 2, 0, 1)
    return {
        "turns": ["right" if letter == "r" else "left" for letter in letters],
        "observations": observations,
        **adjusted(nominal, observations),
    }


# What is believed of houses and of readings, as the engine states it.
STEPS, SQUAREST, MIDDLE, SPREAD = 11, 0.1, 0.7, 0.5
WRONG, AT_BEST, OFF = 0.06, 0.2, [1.0, 3.0, 10.0, 30.0, 100.0]
TAPE = 0.08


def house(dice, shape, wrong):
    """A room of a house whose squareness nobody knows, one reading off by so many inches: how
    likely each reading is the wrong one. Every squareness and every size of a mistake is
    a least-squares problem of its own here, the mistake as part of the reading's variance."""
    letters, lengths = SHAPES[shape]
    nominal = walk(letters, lengths(*(dice.uniform(40, 120) for _ in range(5))))
    true = [(x + dice.gauss(0, 0.6), y + dice.gauss(0, 0.6)) for x, y in nominal]
    count = len(true)
    pairs = [(n, (n + 1) % count) for n in range(count)] + [(0, 2), (1, 3)] + [(0, 3), (2, 5)][: count - 4]
    readings = [distance(dice, true, *pair) for pair in pairs]
    for reading in readings:
        reading["sigma"] = round(TAPE * NM)
    spoiled = dice.randrange(len(readings))
    readings[spoiled]["is"] += wrong * NM
    built = [
        {"kind": "built", "at": (n + 1) % count, "is": 90_000_000 if letter == "r" else -90_000_000}
        for n, letter in enumerate(letters)
    ]
    return {
        "turns": ["right" if letter == "r" else "left" for letter in letters],
        "observations": readings + built,
        **weighed(nominal, readings, built),
    }


def weighed(nominal, readings, built):
    degrees = [SQUAREST * 2 ** (step / 2) for step in range(STEPS)]
    weights = [math.exp(-0.5 * (math.log(size / MIDDLE) / SPREAD) ** 2) for size in degrees]
    prior = [math.log(weight / sum(weights)) for weight in weights]
    per_reading = math.log(WRONG / len(readings))

    def likely(size, doubted=None, off=0.0):
        sigmas = [math.hypot(TAPE, off if n == doubted else 0.0) for n in range(len(readings))]
        return log_likelihood(nominal, readings, sigmas, built, math.radians(size))

    clean = [before + likely(size) for before, size in zip(prior, degrees)]
    wrong = [
        [
            before + per_reading + log_sum([likely(size, n, off) for off in OFF]) - math.log(len(OFF))
            for before, size in zip(prior, degrees)
        ]
        for n in range(len(readings))
    ]
    every = log_sum(clean + [log for logs in wrong for log in logs])
    return {
        "clean": math.exp(log_sum(clean) - every),
        "chances": [math.exp(log_sum(logs) - every) for logs in wrong],
        "squareness": [max(AT_BEST, middle(degrees, logs)) for logs in [clean, *wrong]],
    }


def log_likelihood(nominal, readings, sigmas, built, square):
    """Everything measured, the corners integrated out by Laplace's approximation."""
    count = len(nominal)

    def residuals(unknown):
        at = corners_of(unknown, count)
        lengths = [
            (math.dist(at[reading["from"]], at[reading["to"]]) - reading["is"] / NM) / sigma
            for reading, sigma in zip(readings, sigmas)
        ]
        return lengths + [misfit({**corner, "kind": "angle", "sigma": math.degrees(square) * 1e6}, at) for corner in built]

    start = [nominal[1][0]] + [value for corner in nominal[2:] for value in corner]
    found = least_squares(residuals, start, xtol=1e-14, ftol=1e-14, gtol=1e-14, jac="3-point")
    _, determinant = numpy.linalg.slogdet(found.jac.T @ found.jac)
    spare = len(readings) + len(built) - len(start)
    sizes = sum(math.log(sigma) for sigma in sigmas) + len(built) * math.log(square)
    return -sizes - determinant / 2 - sum(value * value for value in found.fun) / 2 - spare * math.log(math.tau) / 2


def log_sum(logs):
    most = max(logs)
    return most + math.log(sum(math.exp(log - most) for log in logs))


def middle(degrees, logs):
    every = log_sum(logs)
    return math.exp(sum(math.exp(log - every) * math.log(size) for size, log in zip(degrees, logs)))


def corners_of(unknown, count):
    return [(0.0, 0.0), (unknown[0], 0.0)] + [(unknown[2 * n - 3], unknown[2 * n - 2]) for n in range(2, count)]


def walk(letters, lengths):
    x = y = 0.0
    heading = 0
    corners = []
    for letter, length in zip(letters, lengths):
        corners.append((x, y))
        x += length * [1, 0, -1, 0][heading]
        y += length * [0, 1, 0, -1][heading]
        heading = (heading + (1 if letter == "r" else -1)) % 4
    return corners


def distance(dice, corners, start, end):
    read = math.dist(corners[start], corners[end]) + dice.gauss(0, 0.07)
    return {"kind": "distance", "from": start, "to": end, "is": round(read * NM), "sigma": round(0.07 * NM)}


def aside(dice, corners, of, start, end):
    offset, along = located(corners[of], corners[start], corners[end])
    base = {"of": of, "from": start, "to": end, "sigma": round(0.1 * NM)}
    return [
        {"kind": "offset", **base, "is": round((offset + dice.gauss(0, 0.1)) * NM)},
        {"kind": "along", **base, "is": round((along + dice.gauss(0, 0.1)) * NM)},
    ]


def located(point, start, end):
    ux, uy = end[0] - start[0], end[1] - start[1]
    px, py = point[0] - start[0], point[1] - start[1]
    length = math.hypot(ux, uy)
    return (ux * py - uy * px) / length, (ux * px + uy * py) / length


def adjusted(nominal, observations):
    count = len(nominal)

    def corners(unknown):
        return corners_of(unknown, count)

    def residuals(unknown):
        at = corners(unknown)
        return [misfit(observation, at) for observation in observations]

    start = [nominal[1][0]] + [value for corner in nominal[2:] for value in corner]
    found = least_squares(residuals, start, xtol=1e-15, ftol=1e-15, gtol=1e-15, jac="3-point")
    covariance = numpy.linalg.inv(found.jac.T @ found.jac)
    at = corners(found.x)
    slope = numpy.array([area_slope(corners, found.x, n) for n in range(len(found.x))])
    polygon = Polygon(at)
    assert polygon.is_valid
    return {
        "corners": [[round(x, 7), round(y, 7)] for x, y in at],
        "area": polygon.area,
        "area_sigma": float(math.sqrt(slope @ covariance @ slope)),
        "variance_factor": float(sum(value * value for value in found.fun) / (len(observations) - len(found.x))),
    }


def area_slope(corners, unknown, n, step=1e-4):
    up, down = list(unknown), list(unknown)
    up[n] += step
    down[n] -= step
    return (Polygon(corners(up)).area - Polygon(corners(down)).area) / (2 * step)


def misfit(observation, at):
    """Computed less read, over the standard deviation."""
    kind = observation["kind"]
    if kind == "angle":
        corner = observation["at"]
        before, after = at[corner - 1], at[(corner + 1) % len(at)]
        one = math.atan2(at[corner][1] - before[1], at[corner][0] - before[0])
        other = math.atan2(after[1] - at[corner][1], after[0] - at[corner][0])
        off = other - one - math.radians(observation["is"] / 1e6)
        return math.remainder(off, math.tau) / math.radians(observation["sigma"] / 1e6)
    if kind == "distance":
        computed = math.dist(at[observation["from"]], at[observation["to"]])
    else:
        offset, along = located(at[observation["of"]], at[observation["from"]], at[observation["to"]])
        computed = offset if kind == "offset" else along
    return (computed - observation["is"] / NM) / (observation["sigma"] / NM)


if __name__ == "__main__":
    main("adjust.json", build)
