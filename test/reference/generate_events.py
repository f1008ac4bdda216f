"""Reference risings, transits, settings and twilights by skyfield on JPL DE421: dense sampling, then bisection.

Each span is a night by Pierhand's definition (local mean noon to the next). skyfield's own almanac searches are run beside
the sampling wherever the path is not grazing, and must agree to half a second.
"""
import numpy as np
from skyfield import almanac
from skyfield.api import Star, wgs84

from reference_common import (
    RADIAL_VELOCITY, SITES, TARGETS, ephemeris, hipparcos_at_j2000, ms_of, observer, seeded, skyfield_time, timescale, write,
)

STEP_MS = 60_000
DAY_MS = 86_400_000
REFRACTION_DEG = 34 / 60
SUN_HORIZON_DEG = -50 / 60
MOON_RADIUS_KM = 1737.4
STEEP_DEG_PER_HOUR = 2.0  # below this a path is called grazing


class Sky:
    """Height of a body above its horizon, and hour angle, at arrays of UTC milliseconds."""

    def __init__(self, site, target, horizon):
        self.place = ephemeris["earth"] + wgs84.latlon(site[0], site[1], site[2])
        self.target, self.horizon = target, horizon

    def apparent(self, utc_ms):
        return self.place.at(skyfield_time(utc_ms)).observe(self.target).apparent()

    def height(self, utc_ms):
        altitude, _, distance = self.apparent(np.atleast_1d(utc_ms)).altaz()
        if self.horizon == "moon":
            return altitude.degrees + np.degrees(np.arcsin(MOON_RADIUS_KM / distance.km)) + REFRACTION_DEG
        return altitude.degrees - self.horizon

    def hour_angle(self, utc_ms):
        angle, _, _ = self.apparent(np.atleast_1d(utc_ms)).hadec()
        return (angle.hours + 12) % 24 - 12


def bisect(function, low, high):
    """Zeros of `function` in brackets, all at once, to 0.1 ms."""
    low, high = np.array(low, float), np.array(high, float)
    if not len(low):
        return low
    sign = np.sign(function(low))
    for _ in range(20):
        middle = (low + high) / 2
        same = np.sign(function(middle)) == sign
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    return (low + high) / 2


def crossings(function, start, end):
    """[(utc ms, rising?)] of all zeros; turning points near zero are looked at second by second."""
    times = np.linspace(start, end, round((end - start) / STEP_MS) + 1)
    values = function(times)
    extra = []
    for i in range(1, len(times) - 1):
        turning = (values[i] - values[i - 1]) * (values[i + 1] - values[i]) <= 0
        if turning and abs(values[i]) < 0.05:
            extra.append(np.linspace(times[i - 1], times[i + 1], 121))
    if extra:
        times = np.unique(np.concatenate([times, *extra]))
        values = function(times)
    i = np.nonzero((values[:-1] > 0) != (values[1:] > 0))[0]
    return list(zip(bisect(function, times[i], times[i + 1]).tolist(), (values[i + 1] > 0).tolist())), values


def rate(function, utc_ms):
    before, after = function(np.array([utc_ms - 5000, utc_ms + 5000]))
    return float((after - before) * 360)


def events(sky, start, end):
    found, values = crossings(sky.height, start, end)
    rise = next((t for t, rising in found if rising), None)
    fall = next((t for t, rising in found if not rising), None)
    times = np.linspace(start, end, 145)
    angle = sky.hour_angle(times)
    i = np.nonzero((angle[:-1] < 0) & (angle[1:] >= 0) & (angle[1:] - angle[:-1] < 12))[0]
    transits = bisect(sky.hour_angle, times[i], times[i + 1])
    return {
        "riseUtcMs": rise, "setUtcMs": fall, "transitUtcMs": float(transits[0]) if len(transits) else None,
        "riseRateDegPerHour": None if rise is None else rate(sky.height, rise),
        "setRateDegPerHour": None if fall is None else rate(sky.height, fall),
        "crossings": len(found), "highestAboveHorizonDeg": float(values.max()), "lowestAboveHorizonDeg": float(values.min()),
        "alwaysUp": not found and bool(values[0] > 0), "neverUp": not found and bool(values[0] <= 0),
    }


def agree_with_almanac(sky, result, start, end):
    """skyfield's find_risings and find_settings must say the same where the path is steep."""
    t0, t1 = skyfield_time(start), skyfield_time(end)
    for search, key, slope in ((almanac.find_risings, "riseUtcMs", "riseRateDegPerHour"),
                               (almanac.find_settings, "setUtcMs", "setRateDegPerHour")):
        if result[key] is None or abs(result[slope]) < STEEP_DEG_PER_HOUR:
            continue
        horizon = None if sky.horizon == "moon" else float(sky.horizon)
        times, real = search(sky.place, sky.target, t0, t1, horizon_degrees=horizon)
        # skyfield's Moon has a slightly different radius.
        offsets = [abs((t.tt - skyfield_time(result[key]).tt) * 86400) for t, yes in zip(times, real) if yes]
        assert offsets and min(offsets) < 0.5, (key, result, offsets)


def night(site, year, month, day):
    start = round(ms_of(year, month, day, 12) - site[1] / 15 * 3_600_000)
    return start, start + DAY_MS


def random_night(rng, site):
    return night(site, rng.randrange(2020, 2036), rng.randrange(1, 13), rng.randrange(1, 29))


def star_target(star, velocity=0.0):
    return Star(ra_hours=star["raHoursJ2000"], dec_degrees=star["decDegJ2000"], ra_mas_per_year=star.get("pmRaCosDecMasPerYear", 0),
                dec_mas_per_year=star.get("pmDecMasPerYear", 0), parallax_mas=star.get("parallaxMas", 0), radial_km_per_s=velocity)


def case_of(name, body, site, span, sky):
    start, end = span
    result = events(sky, start, end)
    agree_with_almanac(sky, result, start, end)
    return {"name": name, "body": body, "observer": observer(site), "startUtcMs": start, "endUtcMs": end, **result}


def star_cases(rng):
    stars = hipparcos_at_j2000()
    cases = []
    for index in range(132):
        site = SITES[index % len(SITES)]
        name = rng.choice(list(stars))
        sky = Sky(site, star_target(stars[name], RADIAL_VELOCITY.get(name, 0.0)), -REFRACTION_DEG)
        cases.append(case_of(name, {"kind": "fixed", **stars[name]}, site, random_night(rng, site), sky))
    return cases


def moving_cases(rng):
    names = list(TARGETS)
    cases = []
    for index in range(176):
        site = SITES[index % len(SITES)]
        name = names[(index // 2) % len(names)]
        horizon = {"Sun": SUN_HORIZON_DEG, "Moon": "moon"}.get(name, -REFRACTION_DEG)
        sky = Sky(site, ephemeris[TARGETS[name]], horizon)
        cases.append(case_of(name, {"kind": "solarSystem", "body": name}, site, random_night(rng, site), sky))
    return cases


def grazing_cases(rng):
    """Stars placed to clear, or just miss, the horizon at culmination; the Sun and Moon on the days they nearly do."""
    cases = []
    for index in range(48):
        site = SITES[1 + index % (len(SITES) - 2)]
        span = random_night(rng, site)
        north = 1 if site[0] >= 0 else -1
        clearance = rng.choice([-0.3, -0.05, -0.01, 0.01, 0.03, 0.1, 0.5])
        # Upper culmination at the far horizon, or lower culmination at the near one; of-date declination aimed at.
        if index % 2 == 0:
            dec_of_date = -north * (90 - abs(site[0]) + REFRACTION_DEG - clearance)
        else:
            dec_of_date = north * (90 - abs(site[0]) - REFRACTION_DEG + clearance)
        ra = rng.uniform(0, 24)
        dec = dec_of_date
        for _ in range(3):
            target = star_target({"raHoursJ2000": ra, "decDegJ2000": dec})
            place = ephemeris["earth"] + wgs84.latlon(site[0], site[1], site[2])
            seen = place.at(skyfield_time((span[0] + span[1]) / 2)).observe(target).apparent().radec("date")[1].degrees
            dec += dec_of_date - seen
        body = {"raHoursJ2000": ra, "decDegJ2000": dec}
        sky = Sky(site, star_target(body), -REFRACTION_DEG)
        cases.append(case_of("a grazing star", {"kind": "fixed", **body}, site, span, sky))
    for site in [s for s in SITES if abs(s[0]) > 65]:
        for name, horizon in (("Sun", SUN_HORIZON_DEG), ("Moon", "moon")):
            sky = Sky(site, ephemeris[TARGETS[name]], horizon)
            year = rng.randrange(2020, 2035)
            kept = 0
            start = night(site, year, 1, 1)[0] + rng.randrange(0, 200) * DAY_MS
            for day in range(400):
                span = (start + day * DAY_MS, start + (day + 1) * DAY_MS)
                coarse = sky.height(np.linspace(span[0], span[1], 49))
                if min(abs(coarse.max()), abs(coarse.min())) > 0.25:
                    continue
                cases.append(case_of(name, {"kind": "solarSystem", "body": name}, site, span, sky))
                kept += 1
                if kept == 3:
                    break
    return cases


def longest_below(sky, altitude, start, end):
    found, values = crossings(lambda t: sky.height(t) - altitude, start, end)
    edges = [(start, False)] * int(values[0] <= 0) + [(t, True) for t, _ in found] + [(end, False)] * int(values[-1] <= 0)
    spans = list(zip(edges[0::2], edges[1::2]))
    if not spans:
        return None
    (dusk, dusk_real), (dawn, dawn_real) = max(spans, key=lambda s: s[1][0] - s[0][0])
    return {"duskUtcMs": dusk if dusk_real else None, "dawnUtcMs": dawn if dawn_real else None,
            "darkAllNight": not dusk_real and not dawn_real,
            "rateDegPerHour": min(abs(rate(sky.height, t)) for t, real in ((dusk, dusk_real), (dawn, dawn_real)) if real)
            if dusk_real or dawn_real else None}


def twilight_cases(rng):
    cases = []
    for index in range(132):
        site = SITES[index % len(SITES)]
        start, end = random_night(rng, site)
        sky = Sky(site, ephemeris["SUN"], 0.0)
        cases.append({
            "observer": observer(site), "startUtcMs": start, "endUtcMs": end,
            "sun": longest_below(sky, SUN_HORIZON_DEG, start, end), "civil": longest_below(sky, -6, start, end),
            "nautical": longest_below(sky, -12, start, end), "astronomical": longest_below(sky, -18, start, end),
        })
    return cases


def main():
    rng = seeded("events")
    write("events.json", "skyfield on JPL DE421: sampled each minute, bisected, checked against skyfield's almanac searches", {
        "stars": star_cases(rng), "solarSystem": moving_cases(rng), "grazing": grazing_cases(rng), "twilights": twilight_cases(rng),
    })


if __name__ == "__main__":
    main()
