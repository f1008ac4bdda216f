"""Writes test/reference/pointing-misses.json: misses made by a model of hand controllers that shares no code with Pierhand.

Run:  /opt/pyref/bin/python test/reference/generate_pointing_misses.py      (pyerfa, numpy; zones from the system's database)
Each miss has one mistake, 0.5 degrees of noise on positions and 20 s on the sidereal time, and is written as the line a member would type.
The controllers here are plainer than those in bot/pointing: an equatorial go-to that ignores the latitude, a mirrored axis that
turns the hour angle round, a mount that stood off home by some hour angle and declination.
"""
import json
import math
import os
import random
import sys
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import erfa
import numpy as np

COUNT = 340
SEED = 5
HERE = os.path.dirname(os.path.abspath(__file__))
rnd = random.Random(SEED)
HOUR = timedelta(hours=1)
TT_MINUS_UTC_DAYS = 69.184 / 86400

SITES = [
    (51.05, -114.07, "America/Edmonton"), (40.42, -3.70, "Europe/Madrid"), (-33.9, 18.4, "Africa/Johannesburg"), (-37.8, 145.0, "Australia/Melbourne"),
    (28.6, 77.2, "Asia/Kolkata"), (35.7, 139.7, "Asia/Tokyo"), (-23.5, -46.6, "America/Sao_Paulo"), (47.6, -122.3, "America/Los_Angeles"),
    (52.5, 13.4, "Europe/Berlin"), (45.4, -75.7, "America/Toronto"), (-45.87, 170.5, "Pacific/Auckland"), (60.2, 24.9, "Europe/Helsinki"),
]
CAUSES = [
    "daylight-saving", "utc-offset-sign", "utc-offset", "utc-as-local", "twelve-hours", "date-off-by-one", "day-month-swapped", "longitude-sign",
    "minutes-as-decimals", "latitude-sign", "latitude-longitude-swapped", "hemisphere-mode", "epoch", "not-at-home", "polar-axis", "not-tracking",
    "mirrored-axis",
]


def julian(when):
    return 2440587.5, when.timestamp() / 86400


def sidereal_hours(when, longitude):
    a, b = julian(when)
    return (math.degrees(erfa.gst06a(a, b, a, b + TT_MINUS_UTC_DAYS)) / 15 + longitude / 15) % 24


def j2000_from_of_date(ra_hours, dec, when):
    a, b = julian(when)
    to_date = erfa.pnm06a(a, b + TT_MINUS_UTC_DAYS)
    lon, lat = erfa.c2s(to_date.T @ erfa.s2c(math.radians(ra_hours * 15), math.radians(dec)))
    return math.degrees(lon) % 360 / 15, math.degrees(lat)


def altaz(hour_angle_hours, dec, latitude):
    az, alt = erfa.hd2ae(math.radians(hour_angle_hours * 15), math.radians(dec), math.radians(latitude))
    return math.degrees(alt), math.degrees(az) % 360


def hour_angle_and_dec(alt, az, latitude):
    ha, dec = erfa.ae2hd(math.radians(az), math.radians(alt), math.radians(latitude))
    return math.degrees(ha) / 15, math.degrees(dec)


def blurred(alt, az, sigma=0.5):
    v = erfa.s2c(math.radians(az), math.radians(alt)) + np.array([rnd.gauss(0, 1) for _ in range(3)]) * math.radians(sigma)
    lon, lat = erfa.c2s(v)
    return math.degrees(lat), math.degrees(lon) % 360


def sun_altitude(when, latitude, longitude):
    """To a tenth of a degree (Astronomical Almanac, low-precision formulas)."""
    n = (when.timestamp() - 946728000) / 86400
    g = math.radians(357.528 + 0.9856003 * n)
    lon = math.radians(280.46 + 0.9856474 * n + 1.915 * math.sin(g) + 0.02 * math.sin(2 * g))
    tilt = math.radians(23.439)
    ra = math.degrees(math.atan2(math.cos(tilt) * math.sin(lon), math.cos(lon))) / 15
    dec = math.degrees(math.asin(math.sin(tilt) * math.sin(lon)))
    return altaz(sidereal_hours(when, longitude) - ra, dec, latitude)[0]


def sexagesimal(value, places):
    tenths = round(abs(value) * 3600 * 10 ** places)
    whole, fraction = divmod(tenths, 10 ** places)
    return f"{whole // 3600:02d}:{whole // 60 % 60:02d}:{whole % 60:02d}.{fraction:0{places}d}"


def believed_time(cause, t, local, off, standard, saving):
    """What the controller takes for UTC, or None where the mistake cannot be made."""
    if cause == "daylight-saving":
        return t + saving if saving else t - HOUR
    if cause == "utc-offset-sign":
        return t + 2 * standard if standard else None
    if cause == "utc-offset":
        return t + HOUR * rnd.choice([-3, -2, 2, 3, 4, -4])
    if cause == "utc-as-local":
        return t - off if off else None
    if cause == "twelve-hours":
        return t + (-12 * HOUR if local.hour >= 12 else 12 * HOUR)
    if cause == "date-off-by-one":
        return t + rnd.choice([-1, 1]) * timedelta(days=1)
    if cause == "day-month-swapped":
        if local.day > 12 or local.day == local.month:
            return None
        return t + (datetime(local.year, local.day, local.month) - datetime(local.year, local.month, local.day))
    return t


def minutes_as_decimals(deg):
    return math.copysign(int(abs(deg)) + round((abs(deg) % 1) * 60) / 100, deg)


def one_miss(cause):
    lat, lon, zone = rnd.choice(SITES)
    start = datetime(2025, 1, 1, tzinfo=timezone.utc).timestamp()
    t = datetime.fromtimestamp(int(start + rnd.random() * 4 * 365 * 86400), timezone.utc)
    mount = rnd.choice(["german", "german", "fork", "altaz"])
    if sun_altitude(t, lat, lon) > -10 or (cause == "hemisphere-mode" and mount == "altaz") or (cause == "latitude-longitude-swapped" and abs(lon) > 90):
        return None
    local = t.astimezone(ZoneInfo(zone))
    off, saving = local.utcoffset(), local.dst() or timedelta(0)
    believed = believed_time(cause, t, local, off, off - saving, saving)
    if believed is None:
        return None
    ha, dec = hour_angle_and_dec(rnd.uniform(25, 75), rnd.uniform(0, 360), lat)
    ra = (sidereal_hours(t, lon) - ha) % 24
    ra_j, dec_j = j2000_from_of_date(ra, dec, t)
    lat_in, lon_in = {
        "longitude-sign": (lat, -lon), "latitude-sign": (-lat, lon), "latitude-longitude-swapped": (lon, lat),
        "minutes-as-decimals": (minutes_as_decimals(lat), minutes_as_decimals(lon)),
    }.get(cause, (lat, lon))
    aim = (ra_j, dec_j) if cause == "epoch" else (ra, dec)
    lst = sidereal_hours(believed, lon_in)
    ha_in = lst - aim[0]
    shown = altaz(ha_in, aim[1], lat_in)
    if mount == "altaz":
        landed = {
            "not-at-home": (shown[0] + rnd.uniform(-8, 8), shown[1] + rnd.uniform(-40, 40)), "mirrored-axis": (shown[0], -shown[1]),
            "not-tracking": altaz(ha - rnd.uniform(8, 60) / 60, dec, lat),
        }.get(cause, shown)
    else:
        landed = altaz(*{
            "hemisphere-mode": (-ha_in, -aim[1]), "mirrored-axis": (-ha_in, aim[1]), "not-tracking": (ha - rnd.uniform(8, 60) / 60, dec),
            "not-at-home": (ha_in + rnd.uniform(-40, 40) / 15, aim[1] + rnd.uniform(-20, 20)),
        }.get(cause, (ha_in, aim[1])), lat)
    if cause == "polar-axis":
        level = rnd.uniform(0, 2 * math.pi)
        turn = erfa.rv2m(np.array([math.cos(level), math.sin(level), 0]) * math.radians(rnd.uniform(2, 6)))
        lon_l, lat_l = erfa.c2s(turn @ erfa.s2c(math.radians(landed[1]), math.radians(landed[0])))
        landed = math.degrees(lat_l), math.degrees(lon_l) % 360
    if abs(landed[0]) > 90:
        return None
    landed, shown = blurred(*landed), blurred(*shown)
    lst_read = sexagesimal((lst + rnd.gauss(0, 20) / 3600) % 24, 1).split(".")[0]
    sign = "-" if dec_j < 0 else "+"
    return (f'astray "{sexagesimal(ra_j, 2)} {sign}{sexagesimal(dec_j, 1)}" landed:{landed[0]:.2f},{landed[1]:.2f} shown:{shown[0]:.2f},{shown[1]:.2f} '
            f'lst:{lst_read} at:{t.strftime("%Y-%m-%dT%H:%M:%SZ")} site:{lat},{lon} mount:{mount}')


def main():
    misses = []
    while len(misses) < COUNT:
        made = one_miss(CAUSES[len(misses) % len(CAUSES)])
        if made is not None:
            misses.append({"cause": CAUSES[len(misses) % len(CAUSES)], "line": made})
    with open(os.path.join(HERE, "pointing-misses.json"), "w", encoding="utf-8") as file:
        json.dump({"madeBy": "test/reference/generate_pointing_misses.py", "seed": SEED,
                   "madeWith": {"python": sys.version.split()[0], "pyerfa": erfa.__version__, "numpy": np.__version__}, "misses": misses}, file, indent=0)
        file.write("\n")


if __name__ == "__main__":
    main()
