"""Random readings kriged by PyKrige with a given exponential variogram; writes
tests/fixtures/kriging.json. Run it by tests/oracles/moisture/run."""

import random
from importlib.metadata import version

import numpy
from pykrige.ok import OrdinaryKriging

from fixture import main, rounded

FIELDS = [(6, 1.0, 4.0, 9.0), (12, 1.0, 25.0, 6.0), (30, 2.5, 16.0, 12.0), (60, 1.0, 9.0, 20.0), (7, 4.0, 0.5, 3.0)]


def build():
    dice = random.Random(20261126)
    return {
        "by": f"PyKrige {version('pykrige')}, numpy {numpy.__version__}",
        "mark": "X",
        "fields": [field(dice, *asked) for asked in FIELDS],
    }


def field(dice, count, nugget, sill, reach):
    samples = [[dice.uniform(0, 20), dice.uniform(0, 14), dice.gauss(18, 4)] for _ in range(count)]
    places = [[dice.uniform(-4, 24), dice.uniform(-4, 18)] for _ in range(12)]
    x, y, z = numpy.array(samples).T
    kriging = OrdinaryKriging(
        x, y, z, variogram_model="exponential", variogram_parameters={"psill": sill, "range": reach, "nugget": nugget}
    )
    values, variances = kriging.execute("points", *numpy.array(places).T)
    return {
        "nugget": nugget,
        "sill": sill,
        "range": reach,
        "samples": samples,
        "places": [[*place, rounded(value), rounded(variance)] for place, value, variance in zip(places, values, variances)],
    }


if __name__ == "__main__":
    main("kriging.json", build)
