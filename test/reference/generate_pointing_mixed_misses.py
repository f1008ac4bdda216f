"""Writes test/reference/pointing-mixed-misses.json: misses as they come, of which many have no single named mistake behind them.

Run:  V/bin/python test/reference/generate_pointing_mixed_misses.py [SEED [COUNT [FILE]]]      (pyerfa, numpy; shares no code with Pierhand)
In turn: one named mistake; clock, date or stored place off by any amount; a base turned; two mistakes at once; something that is
none of them. Noise as in generate_pointing_misses.py: 0.5 degrees on positions, 20 s on the sidereal time. "ids" is what is to be said.
Left out are those nobody could name: an offset that comes to another mistake's shift, and two mistakes of which one moves nothing
read by 1.5 degrees (three times the noise). Every fourth is told without the sidereal time, every eighth by the landing alone ("readings").
"""
import json
import math
import os
import sys
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import erfa
import numpy as np

import generate_pointing_misses as plain
from generate_pointing_misses import HOUR, SITES, altaz, blurred, hour_angle_and_dec, j2000_from_of_date, minutes_as_decimals, sexagesimal, sidereal_hours, sun_altitude

SEED = int(sys.argv[1]) if len(sys.argv) > 1 else 2026
COUNT = int(sys.argv[2]) if len(sys.argv) > 2 else 400
FILE = sys.argv[3] if len(sys.argv) > 3 else os.path.join(os.path.dirname(os.path.abspath(__file__)), "pointing-mixed-misses.json")
rnd = plain.rnd
rnd.seed(SEED)

CLOCKS = ["daylight-saving", "utc-offset-sign", "utc-offset", "utc-as-local", "twelve-hours", "date-off-by-one", "day-month-swapped"]
PLACES = ["longitude-sign", "latitude-sign", "minutes-as-decimals"]
MOUNTS = ["not-at-home", "polar-axis", "not-tracking", "mirrored-axis", "hemisphere-mode"]
KINDS = ["single", "amount", "turned", "two", "none"]


def rotated(altaz_deg, axis, degrees):
    """About a horizontal-frame axis (x north, y east, z up as azimuth runs; left-handed like azimuth itself)."""
    v = erfa.s2c(math.radians(altaz_deg[1]), math.radians(altaz_deg[0]))
    lon, lat = erfa.c2s(erfa.rv2m(np.array(axis) * -math.radians(degrees)) @ v)
    return math.degrees(lat), math.degrees(lon) % 360


def chosen(kind):
    """The mistakes to make, by name, and what is to be said of them."""
    if kind == "single":
        cause = rnd.choice(plain.CAUSES)
        return [cause], [cause]
    if kind == "amount":
        return ["amount-" + rnd.choice(["clock", "days", "place", "longitude"])], ["sidereal-amount"]
    if kind == "turned":
        return ["turned"], None
    if kind == "two":
        first = rnd.choice(CLOCKS)
        second = rnd.choice(PLACES + PLACES + MOUNTS + ["turned"])
        return [first, second], [first, second]
    return ["none"], ["unknown"]


def entered(mistakes, t, local, lat, lon):
    """UTC, latitude and longitude as the controller has them, or None where a mistake cannot be made."""
    off, saving = local.utcoffset(), local.dst() or timedelta(0)
    believed, lat_in, lon_in = t, lat, lon
    for mistake in mistakes:
        moved = plain.believed_time(mistake, t, local, off, off - saving, saving)
        if moved is None or (mistake == "latitude-longitude-swapped" and abs(lon) > 90):
            return None
        believed += moved - t
        if mistake == "amount-clock":
            believed += timedelta(minutes=rnd.choice([-1, 1]) * rnd.uniform(6, 600))
        if mistake == "amount-days":
            believed += timedelta(days=rnd.choice([-1, 1]) * rnd.randint(3, 170))
        if mistake == "amount-longitude":
            lon_in += rnd.choice([-1, 1]) * rnd.uniform(2, 60)
        if mistake == "amount-place":
            lat_in += rnd.uniform(-6, 6)
            lon_in += rnd.choice([-1, 1]) * rnd.uniform(2, 30)
        if mistake == "longitude-sign":
            lon_in = -lon_in
        if mistake == "latitude-sign":
            lat_in = -lat_in
        if mistake == "latitude-longitude-swapped":
            lat_in, lon_in = lon, lat
        if mistake == "minutes-as-decimals":
            lat_in, lon_in = minutes_as_decimals(lat_in), minutes_as_decimals(lon_in)
    return believed, lat_in, lon_in


def shift_has_another_name(shift, local):
    off, saving = local.utcoffset(), local.dst() or timedelta(0)
    return shift in (-off, 2 * (off - saving), 2 * off, saving or -HOUR, 12 * HOUR, -12 * HOUR)


def apart(a, b):
    return math.degrees(erfa.seps(math.radians(a[1]), math.radians(a[0]), math.radians(b[1]), math.radians(b[0])))


def turned_by(mount):
    """East positive. Alt-azimuth: to the south, by compass, or anyhow; equatorial: some degrees."""
    if mount != "altaz":
        return rnd.choice([-1, 1]) * rnd.uniform(3, 14)
    return rnd.choice([180 + rnd.gauss(0, 4), rnd.choice([-1, 1]) * rnd.uniform(4, 20), rnd.uniform(15, 345)])


def landing(mistakes, mount, lat, lat_in, ha_in, dec_in, shown):
    """Where the tube goes, alt and az."""
    if mount == "altaz":
        at = shown
        if "mirrored-axis" in mistakes:
            at = (at[0], -at[1])
        if "not-at-home" in mistakes:
            at = (at[0] + rnd.uniform(-8, 8), at[1] + rnd.uniform(-40, 40))
    else:
        ha, dec = ha_in, dec_in
        # An equatorial go-to that takes the hemisphere from the latitude it was told.
        if ("hemisphere-mode" in mistakes) != ((lat_in < 0) != (lat < 0)):
            ha, dec = -ha, -dec
        if "mirrored-axis" in mistakes:
            ha = -ha
        if "not-at-home" in mistakes:
            ha, dec = ha + rnd.uniform(-40, 40) / 15, dec + rnd.uniform(-20, 20)
        if abs(dec) > 90:
            return None
        at = altaz(ha, dec, lat)
    if "not-tracking" in mistakes:
        # Whatever else is wrong, it stands where the display stood then.
        before = ha_in - rnd.uniform(8, 60) / 60
        southern = mount != "altaz" and (lat_in < 0) != (lat < 0)
        at = altaz(before, dec_in, lat_in) if mount == "altaz" else altaz(-before if southern else before, -dec_in if southern else dec_in, lat)
    if "polar-axis" in mistakes:
        level = rnd.uniform(0, 2 * math.pi)
        at = rotated(at, [math.cos(level), math.sin(level), 0], rnd.uniform(2, 6))
    if "turned" in mistakes:
        at = rotated(at, [0, 0, 1], -turned_by(mount))
    return at


def one_miss(kind, readings):
    lat, lon, zone = rnd.choice(SITES)
    start = datetime(2025, 1, 1, tzinfo=timezone.utc).timestamp()
    t = datetime.fromtimestamp(int(start + rnd.random() * 4 * 365 * 86400), timezone.utc)
    mount = rnd.choice(["german", "fork", "altaz"])
    if sun_altitude(t, lat, lon) > -10:
        return None
    mistakes, ids = chosen(kind)
    if "turned" in mistakes:
        ids = [("facing" if mount == "altaz" else "polar-axis") if cause == "turned" else cause for cause in (ids or ["turned"])]
    if "hemisphere-mode" in mistakes and mount == "altaz":
        return None
    local = t.astimezone(ZoneInfo(zone))
    entries = entered(mistakes, t, local, lat, lon)
    if entries is None or (("utc-offset" in mistakes) and shift_has_another_name(entries[0] - t, local)):
        return None
    believed, lat_in, lon_in = entries
    if abs(lat_in) > 90:
        return None
    ha, dec = hour_angle_and_dec(rnd.uniform(25, 75), rnd.uniform(0, 360), lat)
    ra = (sidereal_hours(t, lon) - ha) % 24
    ra_j, dec_j = j2000_from_of_date(ra, dec, t)
    aim = (ra_j, dec_j) if "epoch" in mistakes else (ra, dec)
    lst = sidereal_hours(believed, lon_in)
    ha_in = lst - aim[0]
    shown = altaz(ha_in, aim[1], lat_in)
    landed = landing(mistakes, mount, lat, lat_in, ha_in, aim[1], shown)
    if "none" in mistakes:
        way = rnd.choice(["landing", "all", "display"])
        anywhere = lambda: (math.degrees(math.asin(rnd.uniform(-0.3, 1))), rnd.uniform(0, 360))
        if way != "display":
            landed = anywhere()
        if way != "landing":
            shown = anywhere()
        if way == "all":
            lst = rnd.uniform(0, 24)
        if way != "display" and apart(landed, altaz(ha, dec, lat)) < 60:
            return None
    if landed is None or abs(landed[0]) > 90:
        return None
    if kind == "two":
        alone = entered(mistakes[:1], t, local, lat, lon)
        ha_alone = sidereal_hours(alone[0], alone[2]) - aim[0]
        shown_alone = altaz(ha_alone, aim[1], alone[1])
        landed_alone = landing(mistakes[:1], mount, lat, alone[1], ha_alone, aim[1], shown_alone)
        if apart(shown, shown_alone) < 1.5 and apart(landed, landed_alone) < 1.5:
            return None
    landed, shown = blurred(*landed), blurred(*shown)
    lst_read = sexagesimal((lst + rnd.gauss(0, 20) / 3600) % 24, 1).split(".")[0]
    sign = "-" if dec_j < 0 else "+"
    parts = {"landed": f"landed:{landed[0]:.2f},{landed[1]:.2f}", "shown": f"shown:{shown[0]:.2f},{shown[1]:.2f}", "lst": f"lst:{lst_read}"}
    line = (f'astray "{sexagesimal(ra_j, 2)} {sign}{sexagesimal(dec_j, 1)}" {" ".join(parts[name] for name in readings)} '
            f'at:{t.strftime("%Y-%m-%dT%H:%M:%SZ")} site:{lat},{lon} mount:{mount}')
    minutes = round(((lst - sidereal_hours(t, lon) + 12) % 24 - 12) * 60, 3)
    return {"kind": kind, "ids": ids, "readings": list(readings), "offsetMinutes": minutes if kind == "amount" else None, "line": line}


misses = []
while len(misses) < COUNT:
    number = len(misses)
    readings = ("landed",) if number % 8 == 7 else ("landed", "shown") if number % 4 == 3 else ("landed", "shown", "lst")
    made = one_miss(KINDS[number % len(KINDS)], readings)
    if made is not None:
        misses.append(made)
with open(FILE, "w", encoding="utf-8") as file:
    json.dump({"madeBy": "test/reference/generate_pointing_mixed_misses.py", "seed": SEED,
               "madeWith": {"python": sys.version.split()[0], "pyerfa": erfa.__version__, "numpy": np.__version__}, "misses": misses}, file, indent=0)
    file.write("\n")
