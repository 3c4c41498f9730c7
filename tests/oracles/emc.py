"""Equilibrium moisture content by the handbook equation's Fahrenheit form, which the
engine does not use (it has the Celsius one), and writes tests/fixtures/emc_fahrenheit.json.

    python3 tests/oracles/emc.py            writes the fixture
    python3 tests/oracles/emc.py --check    computes anew and compares

Coefficients: Wood Handbook eq. 4-5 as restated by a secondary page (P-secondary).
"""

from fixture import main, rounded

TEMPERATURES_F = range(30, 131, 5)
HUMIDITIES = range(0, 96, 5)


def polynomial(t, a, b, c):
    return a + t * (b + t * c)


def emc(temp_f, rh):
    weight = polynomial(temp_f, 330, 0.452, 0.00415)
    k = polynomial(temp_f, 0.791, 0.000463, -0.000000844)
    one = polynomial(temp_f, 6.34, 0.000775, -0.0000935)
    two = polynomial(temp_f, 1.09, 0.0284, -0.0000904)
    x = k * rh / 100
    # Both terms over one denominator each, by Horner: not the engine's grouping.
    return 1800 / weight * (x / (1 - x) + one * x * (1 + 2 * two * x) / (1 + one * x * (1 + two * x)))


def build():
    return {
        "oracle": "Wood Handbook eq. 4-5, Fahrenheit form, computed by this script",
        "mark": "X from P-secondary",
        "written_by": "tests/oracles/emc.py",
        "columns": ["temp_f", "rh", "emc_pct"],
        "rows": [[t, rh, rounded(emc(t, rh))] for t in TEMPERATURES_F for rh in HUMIDITIES],
    }


if __name__ == "__main__":
    main("emc_fahrenheit.json", build)
