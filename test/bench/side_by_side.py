"""Times the same questions in skyfield and astropy: reads the cases as JSON on standard input, writes milliseconds a run as JSON.

Each question is asked one at a time, as a chat asks it; what a library can set up once (ephemeris, time scale) is set up
before the clock starts, and each kind of question is run once unmeasured first.
"""
import json
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "reference"))
import numpy as np
from astropy import units as u
from astropy.coordinates import AltAz, EarthLocation, SkyCoord
from astropy.time import Time
from reference_common import TARGETS, ephemeris, skyfield_time
from skyfield import almanac
from skyfield.api import Star, wgs84

STEPS = 25


def star_of(body):
    return Star(ra_hours=body["raHoursJ2000"], dec_degrees=body["decDegJ2000"], ra_mas_per_year=body.get("pmRaCosDecMasPerYear", 0),
                dec_mas_per_year=body.get("pmDecMasPerYear", 0), parallax_mas=body.get("parallaxMas", 0))


def target_of(body):
    return star_of(body) if body["kind"] == "fixed" else ephemeris[TARGETS[body["body"]]]


def place_of(observer):
    return ephemeris["earth"] + wgs84.latlon(observer["latitudeDeg"], observer["longitudeDeg"], observer["elevationM"])


def location_of(observer):
    return EarthLocation.from_geodetic(observer["longitudeDeg"] * u.deg, observer["latitudeDeg"] * u.deg, observer["elevationM"] * u.m)


def astropy_time(utc_ms):
    return Time(utc_ms / 86_400_000 + 2440587.5, format="jd", scale="utc")


def skyfield_altitude(case):
    altitude, azimuth, _ = place_of(case["observer"]).at(skyfield_time(case["utcMs"])).observe(target_of(case["body"])).apparent().altaz()
    return altitude.degrees, azimuth.degrees


def astropy_altitude(case):
    body = case["body"]
    if body["kind"] != "fixed":
        return None
    coordinate = SkyCoord(ra=body["raHoursJ2000"] * 15 * u.deg, dec=body["decDegJ2000"] * u.deg)
    seen = coordinate.transform_to(AltAz(obstime=astropy_time(case["utcMs"]), location=location_of(case["observer"])))
    return seen.alt.deg, seen.az.deg


def skyfield_up(case):
    """Rising, transit and setting of the target; Sun's rising, setting and twilights; the Moon's phase and distance at transit."""
    place, target = place_of(case["observer"]), target_of(case["body"])
    start, end = skyfield_time(case["startUtcMs"]), skyfield_time(case["endUtcMs"])
    almanac.find_risings(place, target, start, end)
    almanac.find_settings(place, target, start, end)
    transits = almanac.find_transits(place, target, start, end)
    for horizon in (-50 / 60, -6, -12, -18):
        almanac.find_risings(place, ephemeris["sun"], start, end, horizon_degrees=horizon)
        almanac.find_settings(place, ephemeris["sun"], start, end, horizon_degrees=horizon)
    almanac.find_risings(place, ephemeris["moon"], start, end)
    almanac.find_settings(place, ephemeris["moon"], start, end)
    moment = transits[0] if len(transits) else start
    at = place.at(moment)
    moon = at.observe(ephemeris["moon"]).apparent()
    moon.fraction_illuminated(ephemeris["sun"])
    moon.separation_from(at.observe(target).apparent())


def vectors(catalogue):
    return Star(ra_hours=np.array(catalogue["raHours"]), dec_degrees=np.array(catalogue["decDeg"]))


def skyfield_tonight(case, catalogue):
    place = place_of(case["observer"])
    best = np.full(len(catalogue["raHours"]), -90.0)
    stars = vectors(catalogue)
    for utc_ms in np.linspace(case["startUtcMs"], case["endUtcMs"], STEPS):
        best = np.maximum(best, place.at(skyfield_time(utc_ms)).observe(stars).apparent().altaz()[0].degrees)
    return np.argsort(-best)[:10]


def astropy_tonight(case, catalogue):
    stars = SkyCoord(ra=np.array(catalogue["raHours"]) * 15 * u.deg, dec=np.array(catalogue["decDeg"]) * u.deg)
    location = location_of(case["observer"])
    best = np.full(len(catalogue["raHours"]), -90.0)
    for utc_ms in np.linspace(case["startUtcMs"], case["endUtcMs"], STEPS):
        best = np.maximum(best, stars.transform_to(AltAz(obstime=astropy_time(utc_ms), location=location)).alt.deg)
    return np.argsort(-best)[:10]


def times(cases, work):
    work(cases[0])
    found = []
    for case in cases:
        began = time.perf_counter()
        work(case)
        found.append((time.perf_counter() - began) * 1000)
    return found


asked = json.load(sys.stdin)
catalogue = asked["catalogue"]
fixed = [case for case in asked["altitude"] if case["body"]["kind"] == "fixed"]
json.dump({
    "altitude": {"skyfield": times(asked["altitude"], skyfield_altitude), "astropy": times(fixed[:40], astropy_altitude)},
    "altitudesDeg": [skyfield_altitude(case)[0] for case in asked["altitude"]],
    "up": {"skyfield": times(asked["up"], skyfield_up)},
    "tonight": {
        "skyfield": times(asked["tonight"], lambda case: skyfield_tonight(case, catalogue)),
        "astropy": times(asked["tonight"][:1], lambda case: astropy_tonight(case, catalogue)),
    },
}, sys.stdout)
