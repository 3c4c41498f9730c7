"""The mold index in constant climates, integrated step by step by scipy; writes
tests/fixtures/mould.json. Run it by tests/oracles/moisture/run.

The equation and its constants are those that the engine states; what is compared here is
the engine's closed form and its hourly steps with another integrator.
"""

import math
from importlib.metadata import version

from scipy.integrate import solve_ivp

from fixture import main, rounded

CLASSES = {
    "vs": (1.0, 2.0, 1.0, 7.0, 2.0, 80.0),
    "s": (0.578, 0.386, 0.3, 6.0, 1.0, 80.0),
    "mr": (0.072, 0.097, 0.0, 5.0, 1.5, 85.0),
    "r": (0.033, 0.014, 0.0, 3.0, 1.0, 85.0),
}
CLIMATES = [(5, 95), (10, 90), (15, 97), (20, 85), (20, 99), (25, 92), (40, 90)]
DAYS = 120


def build():
    return {
        "by": f"scipy {version('scipy')}",
        "mark": "X",
        "columns": ["class", "temp_c", "rh", f"index after {DAYS} days"],
        "rows": [[name, t, rh, rounded(index(name, t, rh))] for name in CLASSES for t, rh in CLIMATES],
    }


def index(name, celsius, percent):
    slow, fast, a, b, c, least = CLASSES[name]
    critical = least
    if celsius <= 20:
        critical = max(-0.00267 * celsius**3 + 0.160 * celsius**2 - 3.13 * celsius + 100, least)
    if percent < critical:
        return 0.0
    over = (critical - percent) / (critical - 100)
    highest = a + b * over - c * over**2
    weeks = math.exp(-0.68 * math.log(celsius) - 13.9 * math.log(percent) + 66.02)

    def growth(_, m):
        pace = slow if m[0] < 1 else fast
        return [pace * max(1 - math.exp(2.3 * (m[0] - highest)), 0) / (7 * weeks)]

    return float(solve_ivp(growth, (0, DAYS), [0.0], rtol=1e-9, atol=1e-10, max_step=0.25).y[0, -1])


if __name__ == "__main__":
    main("mould.json", build)
