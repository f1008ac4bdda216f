"""Reference values of moonlight on the sky, from specsim's independent implementation of Krisciunas and Schaefer (1991).

Run: python generate_moonlight.py > moonlight.json   (specsim 1.0.0, astropy; any Python 3.10 or later)
"""
import json
import warnings

warnings.filterwarnings("ignore")
import astropy.units as u
from specsim.atmosphere import krisciunas_schaefer

cases = []
for obs in (0, 20, 45, 70):
    for moon in (10, 40, 70):
        for separation in (20, 50, 90, 120):
            if abs(obs - moon) <= separation <= obs + moon:
                for phase in (0.0, 0.25, 0.5, 0.75):
                    value = krisciunas_schaefer(obs * u.deg, moon * u.deg, separation * u.deg, phase, 0.172)
                    cases.append({
                        "altitudeDeg": 90 - obs, "moonAltitudeDeg": 90 - moon, "separationDeg": separation,
                        "phaseAngleDeg": 180 * phase, "extinction": 0.172,
                        "magPerArcsec2": round(float(value.value), 4),
                    })
print(json.dumps({"source": "specsim.atmosphere.krisciunas_schaefer", "cases": cases}, indent=1))
