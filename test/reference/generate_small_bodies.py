"""Reference places of comets and minor planets: skyfield's own reading of the lists of test/small-bodies/elements.txt, on JPL DE421.

Run from the repository's root: python test/reference/generate_small_bodies.py. Needs requirements.txt and pandas (pip).
"""
import io
import json
from datetime import datetime, timezone
from importlib.metadata import version
from pathlib import Path

import numpy as np
from skyfield.api import Loader, wgs84
from skyfield.constants import GM_SUN_Pitjeva_2005_km3_s2 as GM_SUN
from skyfield.data import mpc
from skyfield_data import get_skyfield_data_path

ROOT = Path(__file__).resolve().parents[2]
load = Loader(get_skyfield_data_path(), verbose=False)
ephemeris = load("de421.bsp")
timescale = load.timescale(delta_t=69.184, builtin=True)
sun, earth = ephemeris["SUN"], ephemeris["EARTH"]
site = wgs84.latlon(52.71, 0.12, 0)

lines = [l for l in (ROOT / "test/small-bodies/elements.txt").read_text().splitlines() if not l.startswith("#")]
comets = "\n".join(l for l in lines if len(l) < 170) + "\n"
planets = "\n".join(l for l in lines if len(l) >= 170) + "\n"
orbits = []
for _, row in mpc.load_comets_dataframe_slow(io.BytesIO(comets.encode())).iterrows():
    orbits.append((row["designation"], mpc.comet_orbit(row, timescale, GM_SUN)))
for _, row in mpc.load_mpcorb_dataframe(io.BytesIO(planets.encode())).iterrows():
    orbits.append((row["designation"].split(") ")[1], mpc.mpcorb_orbit(row, timescale, GM_SUN)))

cases = []
for name, orbit in orbits:
    for days in (-900, -200, -31, 0, 12, 45, 120, 400):
        utc_ms = 1_795_000_000_000 + days * 86_400_000
        moment = timescale.from_datetime(datetime.fromtimestamp(utc_ms / 1000, timezone.utc))
        # skyfield counts UT1 from UTC by its delta-T: the same 69.184 s as Pierhand's.
        place = (earth + site).at(moment).observe(sun + orbit)
        ra, dec, distance = place.radec()
        from_sun = float(np.linalg.norm(orbit.at(moment).position.au))
        altitude, azimuth, _ = place.apparent().altaz()
        cases.append({
            "name": name, "utcMs": utc_ms, "raHoursJ2000": float(ra.hours), "decDegJ2000": float(dec.degrees),
            "altitudeDeg": float(altitude.degrees), "azimuthDeg": float(azimuth.degrees),
            "distanceAu": float(distance.au), "sunDistanceAu": from_sun,
        })
out = ROOT / "test/reference/small-bodies.json"
out.write_text(json.dumps({
    "source": f"skyfield {version('skyfield')}, skyfield.data.mpc, JPL DE421 (skyfield-data {version('skyfield-data')})",
    "generator": "python test/reference/generate_small_bodies.py", "observer": {"latitudeDeg": 52.71, "longitudeDeg": 0.12, "elevationM": 0},
    "cases": cases}, indent=0) + "\n")
print(len(cases))
