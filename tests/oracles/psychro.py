"""Asks PsychroLib about moist air and writes tests/fixtures/psychro.json.

    python tests/oracles/psychro.py            writes the fixture
    python tests/oracles/psychro.py --check    computes anew and compares

Run it where tests/oracles/requirements.txt is installed; tests/oracles/air/run does both.
Below a dew point of 32 F the library means frost, which the engine does not: such dew
points are null.
"""

from importlib.metadata import version

import psychrolib

from fixture import main, rounded

TEMPERATURES_F = range(34, 101, 6)
HUMIDITIES = range(5, 101, 5)
ALTITUDES_FT = [-500, 0, 1000, 2500, 5000, 7500, 10000]
SEA_LEVEL_PSI = 14.696
HIGH_FT = 5000
# Magnus over water is compared above this dew point only.
FROST_F = 33


def build():
    psychrolib.SetUnitSystem(psychrolib.IP)
    high_psi = psychrolib.GetStandardAtmPressure(HIGH_FT)
    return {
        "oracle": f"PsychroLib {version('psychrolib')} (2017 ASHRAE Handbook Fundamentals, ch. 1), IP units",
        "mark": "X",
        "written_by": "tests/oracles/psychro.py",
        "sea_level_psi": SEA_LEVEL_PSI,
        "high_psi": rounded(high_psi),
        "standard_pressure_ft_psi": [[z, rounded(psychrolib.GetStandardAtmPressure(z))] for z in ALTITUDES_FT],
        "saturation_f_psi": [[t, rounded(psychrolib.GetSatVapPres(t))] for t in TEMPERATURES_F],
        "columns": ["temp_f", "rh", "dew_point_f", "grains_per_lb at sea level", "grains_per_lb at high_psi"],
        "rows": [row(t, rh, high_psi) for t in TEMPERATURES_F for rh in HUMIDITIES],
    }


def row(temp_f, rh, high_psi):
    dew = psychrolib.GetTDewPointFromRelHum(temp_f, rh / 100)
    grains = [7000 * psychrolib.GetHumRatioFromRelHum(temp_f, rh / 100, p) for p in (SEA_LEVEL_PSI, high_psi)]
    return [temp_f, rh, rounded(dew) if dew > FROST_F else None, *map(rounded, grains)]


if __name__ == "__main__":
    main("psychro.json", build)
