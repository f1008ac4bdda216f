"""Reference events: Moon's phases, eclipses, oppositions and meetings by skyfield on JPL DE421.

Run from the repository's root: python test/reference/generate_ahead.py. Needs requirements.txt (pip).
"""
import json
from datetime import datetime, timezone
from importlib.metadata import version
from pathlib import Path

import numpy as np
from skyfield import almanac, eclipselib
from skyfield.api import Loader, wgs84
from skyfield_data import get_skyfield_data_path

ROOT = Path(__file__).resolve().parents[2]
load = Loader(get_skyfield_data_path(), verbose=False)
ephemeris = load("de421.bsp")
timescale = load.timescale(delta_t=69.184, builtin=True)
sun, moon, earth = ephemeris["SUN"], ephemeris["MOON"], ephemeris["EARTH"]
t0, t1 = timescale.utc(2026, 11, 25), timescale.utc(2030, 1, 1)


def ms(time):
    return round(time.utc_datetime().timestamp() * 1000)


def at(utc_ms):
    return timescale.from_datetime(datetime.fromtimestamp(utc_ms / 1000, timezone.utc))


times, phases = almanac.find_discrete(t0, t1, almanac.moon_phases(ephemeris))
out = {"phases": [{"quarter": int(p), "utcMs": ms(t)} for t, p in zip(times, phases)]}

times, kinds, details = eclipselib.lunar_eclipses(t0, t1, ephemeris)
out["lunarEclipses"] = [{"kind": eclipselib.LUNAR_ECLIPSES[k].lower(), "utcMs": ms(t)} for t, k in zip(times, kinds)]

oppositions = []
for name, key in (("Mars", "MARS"), ("Jupiter", "JUPITER BARYCENTER"), ("Saturn", "SATURN BARYCENTER"),
                  ("Uranus", "URANUS BARYCENTER"), ("Neptune", "NEPTUNE BARYCENTER")):
    times, values = almanac.find_discrete(t0, t1, almanac.oppositions_conjunctions(ephemeris, ephemeris[key]))
    oppositions += [{"planet": name, "utcMs": ms(t)} for t, v in zip(times, values) if v == 1]
out["oppositions"] = oppositions

SITES = {"52.71,0.12": (52.71, 0.12), "36.7,-4.4": (36.7, -4.4), "-33.87,151.21": (-33.87, 151.21)}
PEAKS = [datetime(2027, 8, 2, 10, 7), datetime(2028, 1, 26, 15, 8), datetime(2028, 7, 22, 2, 56)]


def circumstances(site, utc_ms):
    there = (earth + site).at(at(utc_ms))
    s, m = there.observe(sun).apparent(), there.observe(moon).apparent()
    rs = np.degrees(np.arcsin(696000.0 / s.distance().km))
    rm = np.degrees(np.arcsin(1737.4 / m.distance().km))
    return s.separation_from(m).degrees, rs, rm, s.altaz()[0].degrees


def covered(d, rs, rm):
    if d >= rs + rm:
        return 0.0
    if d <= abs(rs - rm):
        return min(1.0, (rm / rs) ** 2)
    a = rs * rs * np.arccos((d * d + rs * rs - rm * rm) / (2 * d * rs))
    b = rm * rm * np.arccos((d * d + rm * rm - rs * rs) / (2 * d * rm))
    c = 0.5 * np.sqrt((-d + rs + rm) * (d + rs - rm) * (d - rs + rm) * (d + rs + rm))
    return float((a + b - c) / (np.pi * rs * rs))


solar = []
for label, (lat, lon) in SITES.items():
    site = wgs84.latlon(lat, lon, 0)
    for peak in PEAKS:
        middle = round(peak.replace(tzinfo=timezone.utc).timestamp() * 1000)
        grid = range(middle - 4 * 3_600_000, middle + 4 * 3_600_000, 20_000)
        states = [(t, *circumstances(site, t)) for t in grid]
        touching = [s for s in states if s[1] < s[2] + s[3]]
        if not touching or all(s[4] < 0 for s in touching):
            continue
        best = min(touching, key=lambda s: s[1])
        solar.append({"site": label, "latitudeDeg": lat, "longitudeDeg": lon, "startUtcMs": touching[0][0], "endUtcMs": touching[-1][0],
                      "greatestUtcMs": best[0], "coveredFraction": covered(*best[1:4]), "altitudeDeg": float(best[4])})
out["solarEclipses"] = solar

meetings = []
for utc_ms, key in ((1796022000000, "JUPITER BARYCENTER"), (1798408800000, "JUPITER BARYCENTER")):
    there = (earth + wgs84.latlon(52.71, 0.12, 0)).at(at(utc_ms))
    meetings.append({"planet": "Jupiter", "utcMs": utc_ms,
                     "separationDeg": float(there.observe(moon).apparent().separation_from(there.observe(ephemeris[key]).apparent()).degrees)})
out["meetings"] = meetings

path = ROOT / "test/reference/ahead.json"
path.write_text(json.dumps({"source": f"skyfield {version('skyfield')} on JPL DE421 (skyfield-data {version('skyfield-data')})",
                            "generator": "python test/reference/generate_ahead.py", **out}, indent=0) + "\n")
print({k: len(v) for k, v in out.items()}, solar)
