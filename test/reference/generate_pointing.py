"""Writes test/reference/pointing-*.json: pointing values from outside Pierhand, and the versions that made them.

Run:  /opt/pyref/bin/python test/reference/generate_pointing.py      (astropy, pyerfa, numpy; pygeomag 1.1 or later for the magnetic part)
Nothing here is shared with the code under test: the mount is turned by rotation matrices, the way is walked in small steps.
"""
import json
import math
import os
import sys

import astropy
import erfa
import numpy as np
from astropy import units as u
from astropy.coordinates import EarthLocation, get_body, TETE
from astropy.time import Time
from astropy.utils import iers

iers.conf.auto_download = False
HERE = os.path.dirname(os.path.abspath(__file__))
rng = np.random.default_rng(20261125)
MADE_WITH = {"python": sys.version.split()[0], "astropy": astropy.__version__, "pyerfa": erfa.__version__, "numpy": np.__version__}


def write(name, payload):
    with open(os.path.join(HERE, name), "w", encoding="utf-8") as file:
        json.dump({"madeBy": "test/reference/generate_pointing.py", "madeWith": MADE_WITH, **payload}, file, indent=1)
        file.write("\n")


def random_time():
    t = Time(float(rng.uniform(2459580.5, 2466154.5)), format="jd", scale="utc")
    t = Time(round(t.unix), format="unix", scale="utc")
    t.delta_ut1_utc = 0.0
    return t


def utc_text(t):
    return t.utc.isot.split(".")[0] + "Z"


# Pole stars of date, apparent. Hipparcos, the New Reduction (van Leeuwen 2007): RA, Dec (J2000, deg), pm (mas/yr, RA times cos Dec), parallax.
POLE_STARS = {"Polaris": (37.954561, 89.264109, 44.48, -11.86, 7.54), "sigma Octantis": (317.195164, -88.956499, 25.75, 4.98, 11.61)}
pole = []
for name, (ra, dec, pmra, pmdec, plx) in POLE_STARS.items():
    for iso, longitude in (("2020-01-01T00:00:00", 0.0), ("2024-06-15T21:30:00", -70.5), ("2026-11-25T20:00:00", 0.12), ("2027-03-03T11:00:00", 170.5),
                           ("2029-12-31T06:15:00", 115.9), ("2035-08-20T03:00:00", -114.07)):
        t = Time(iso, scale="utc")
        t.delta_ut1_utc = 0.0
        ri, di, eo = erfa.atci13(math.radians(ra), math.radians(dec), math.radians(pmra / 3.6e6) / math.cos(math.radians(dec)),
                                 math.radians(pmdec / 3.6e6), plx / 1000, 0.0, t.tdb.jd1, t.tdb.jd2)
        gast = erfa.era00(t.ut1.jd1, t.ut1.jd2) - eo
        hour_angle = math.degrees(gast - (ri - eo)) / 15 + longitude / 15
        pole.append({"star": name, "utc": iso + "Z", "longitudeDeg": longitude, "separationArcmin": (90 - abs(math.degrees(di))) * 60,
                     "hourAngleHours": (hour_angle + 12) % 24 - 12})
write("pointing-pole-stars.json", {"places": pole})


# The way there, walked in small steps with rotation matrices.
def rotation(axis, angle_deg):
    return np.array(erfa.rv2m(-np.asarray(axis, float) * math.radians(angle_deg)))


Z, X, Y = np.array([0.0, 0, 1]), np.array([1.0, 0, 0]), np.array([0.0, 1, 0])
SPEED = 3.0
STEP_S = 0.004


def hour_angle_vector(ha_deg, dec_deg, sign):
    """x meridian, y west, z elevated pole (left-handed in the north; separations do not mind)."""
    h, d = math.radians(ha_deg), math.radians(sign * dec_deg)
    return np.array([math.cos(d) * math.cos(h), math.cos(d) * math.sin(h), math.sin(d)])


def altaz_vector(ha_deg, dec_deg, lat_deg):
    """x north, y east, z up."""
    az, alt = erfa.hd2ae(math.radians(ha_deg), math.radians(dec_deg), math.radians(lat_deg))
    return np.array([math.cos(alt) * math.cos(az), math.cos(alt) * math.sin(az), math.sin(alt)])


def tube(mount, primary, secondary):
    if mount == "german":
        # Declination axis along x (up, towards the meridian) with the counterweight down; the tube swings about it from the pole.
        return rotation(Z, primary) @ (rotation(X, secondary) @ Z)
    if mount == "fork":
        return rotation(Z, primary) @ (rotation(Y, secondary) @ Z)
    return rotation(Z, primary) @ (rotation(Y, -secondary) @ X)


def axes_to(mount, v, ha_deg):
    """Solve for the axis angles by geometry of the vector alone."""
    if mount == "altaz":
        return math.degrees(math.atan2(v[1], v[0])), math.degrees(math.asin(v[2]))
    polar = math.degrees(math.acos(max(-1, min(1, v[2]))))
    if mount == "fork":
        return math.degrees(math.atan2(v[1], v[0])), polar
    # Two solutions; the usual one has the tube east of the pier for western targets.
    best = None
    for secondary in (polar, -polar):
        start = rotation(X, secondary) @ Z
        primary = math.degrees(math.atan2(v[1], v[0]) - math.atan2(start[1], start[0]))
        primary = (primary + 180) % 360 - 180
        looks_west = secondary < 0
        if looks_west == ((ha_deg % 360) < 180):
            best = (primary, secondary)
    return best


ways = []
while len(ways) < 60:
    t = random_time()
    lat, lon = float(round(rng.uniform(-60, 65), 2)), float(round(rng.uniform(-180, 180), 2))
    location = EarthLocation.from_geodetic(lon * u.deg, lat * u.deg, 0 * u.m)
    sun = get_body("sun", t, location).transform_to(TETE(obstime=t, location=location))
    gast = math.degrees(erfa.gst06a(t.ut1.jd1, t.ut1.jd2, t.tt.jd1, t.tt.jd2))
    sun_ha = gast + lon - sun.ra.deg
    if altaz_vector(sun_ha, sun.dec.deg, lat)[2] < 0:
        continue
    ra, dec = float(rng.uniform(0, 24)), float(math.degrees(math.asin(rng.uniform(-0.95, 0.95))))
    ha = gast + lon - ra * 15
    if altaz_vector(ha, dec, lat)[2] < 0.1:
        continue
    mount = ("german", "fork", "altaz")[len(ways) % 3]
    # Stay off the places where the side or the way round is a toss-up.
    if abs(((ha + 180) % 360) - 180) < 2:
        continue
    sign = 1 if lat >= 0 else -1
    rate = 360.98564736629 / 86400

    def vector(ha_deg, dec_deg, seconds):
        ha_now = ha_deg + rate * seconds
        return altaz_vector(ha_now, dec_deg, lat) if mount == "altaz" else hour_angle_vector(ha_now, dec_deg, sign)

    duration = 0.0
    for _ in range(5):
        goal = axes_to(mount, vector(ha, dec, duration), ha)
        duration = max(abs(goal[0]), abs(goal[1])) / SPEED
    steps = int(duration / STEP_S) + 1
    least, least_at = 999.0, 0.0
    for k in range(steps + 1):
        seconds = min(duration, k * STEP_S)
        now = [math.copysign(min(abs(g), SPEED * seconds), g) for g in goal]
        v, s = tube(mount, *now), vector(sun_ha, sun.dec.deg, seconds)
        separation = math.degrees(math.atan2(np.linalg.norm(np.cross(v, s)), float(v @ s)))
        if separation < least:
            least, least_at = separation, seconds
    ways.append({"utc": utc_text(t), "latitudeDeg": lat, "longitudeDeg": lon, "mount": mount, "target": [ra, dec], "durationS": duration,
                 "minimumSeparationDeg": least, "closestAtS": least_at})
write("pointing-ways.json", {"speedDegPerS": SPEED, "stepS": STEP_S, "ways": ways})

# Magnetic declination by another program of the World Magnetic Model 2025.
try:
    import pygeomag
    model = pygeomag.GeoMag(coefficients_file="wmm/WMM_2025.COF")
    cases = []
    for _ in range(60):
        lat, lon, km, year = round(float(rng.uniform(-75, 80)), 2), round(float(rng.uniform(-180, 180)), 2), round(float(rng.uniform(0, 4)), 2), round(float(rng.uniform(2025, 2029.99)), 3)
        result = model.calculate(glat=lat, glon=lon, alt=km, time=year)
        cases.append({"year": year, "latitudeDeg": lat, "longitudeDeg": lon, "altitudeKm": km, "declinationDeg": result.d, "horizontalNt": result.h})
    MADE_WITH["pygeomag"] = getattr(pygeomag, "__version__", "1.1")
    write("pointing-magnetic.json", {"cases": cases})
except ImportError:
    print("pygeomag is not installed; pointing-magnetic.json is left as it is")
