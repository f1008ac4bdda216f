"""Reference places: stars by astropy (ERFA), Sun, Moon and planets by skyfield on JPL DE421, sidereal time and rotations by pyerfa."""
from datetime import datetime, timedelta

import erfa
import numpy as np
from astropy import units as u
from astropy.coordinates import AltAz, Distance, EarthLocation, SkyCoord, get_sun
from astropy.time import Time
from skyfield.api import wgs84
from skyfield.magnitudelib import planetary_magnitude

from reference_common import (
    RADIAL_VELOCITY, SITES, TARGETS, TT_MINUS_UTC_SECONDS, UNIX_EPOCH_JD, ephemeris, hipparcos_at_j2000, load, observer,
    random_ms, seeded, skyfield_time, write,
)


def astropy_time(utc_ms):
    # By calendar, not by Julian date: on a day with a leap second astropy's UTC days are 86 401 s long.
    return Time(datetime(1970, 1, 1) + timedelta(milliseconds=utc_ms), scale="utc")


def location(site):
    return EarthLocation.from_geodetic(site[1] * u.deg, site[0] * u.deg, site[2] * u.m)


def star_altaz(star, site, utc_ms, radial_velocity=0.0):
    time = astropy_time(utc_ms)
    coordinate = SkyCoord(
        ra=star["raHoursJ2000"] * u.hourangle, dec=star["decDegJ2000"] * u.deg,
        pm_ra_cosdec=star.get("pmRaCosDecMasPerYear", 0) * u.mas / u.yr, pm_dec=star.get("pmDecMasPerYear", 0) * u.mas / u.yr,
        distance=Distance(parallax=max(star.get("parallaxMas", 0), 1e-4) * u.mas), radial_velocity=radial_velocity * u.km / u.s,
        obstime=Time("J2000.0", scale="tt"), frame="icrs",
    ).apply_space_motion(new_obstime=time)
    altaz = coordinate.transform_to(AltAz(obstime=time, location=location(site)))
    return float(altaz.alt.deg), float(altaz.az.deg)


def erfa_dates(utc_ms):
    days = utc_ms / 86_400_000
    return (UNIX_EPOCH_JD, days), (UNIX_EPOCH_JD, days + TT_MINUS_UTC_SECONDS / 86400)


def star_of_date(star, utc_ms, radial_velocity):
    """Apparent geocentric place: ERFA's atci13, moved from the CIO to the equinox."""
    mas = np.pi / 648_000_000
    ra, dec = star["raHoursJ2000"] * np.pi / 12, np.radians(star["decDegJ2000"])
    ri, di, eo = erfa.atci13(ra, dec, star.get("pmRaCosDecMasPerYear", 0) * mas / np.cos(dec), star.get("pmDecMasPerYear", 0) * mas,
                             star.get("parallaxMas", 0) / 1000, radial_velocity, *erfa_dates(utc_ms)[1])
    return {"raHours": float((ri - eo) * 12 / np.pi % 24), "decDeg": float(np.degrees(di))}


def star_cases(rng):
    stars = hipparcos_at_j2000()
    cases = []
    for index in range(352):
        site = SITES[index % len(SITES)]
        utc_ms = random_ms(rng, 2020, 2035)
        if index % 4 == 3:
            name, star = "a fixed place", {"raHoursJ2000": rng.uniform(0, 24), "decDegJ2000": np.degrees(np.arcsin(rng.uniform(-1, 1)))}
        else:
            name = rng.choice(list(stars))
            star = stars[name]
        velocity = RADIAL_VELOCITY.get(name, 0.0)
        altitude, azimuth = star_altaz(star, site, utc_ms, velocity)
        cases.append({
            "name": name, "body": {"kind": "fixed", **star}, "observer": observer(site), "utcMs": utc_ms,
            "altitudeDeg": altitude, "azimuthDeg": azimuth, "ofDate": star_of_date(star, utc_ms, velocity),
        })
    return cases


def solar_system_cases(rng, count, first_year, last_year, time_of, bodies):
    cases = []
    for index in range(count):
        name = bodies[index % len(bodies)]
        site = SITES[(index * 7) % len(SITES)]
        utc_ms = random_ms(rng, first_year, last_year)
        place = ephemeris["earth"] + wgs84.latlon(site[0], site[1], site[2])
        astrometric = place.at(time_of(utc_ms)).observe(ephemeris[TARGETS[name]])
        apparent = astrometric.apparent()
        altitude, azimuth, distance = apparent.altaz()
        ra, dec, _ = apparent.radec("date")
        ra2000, dec2000, _ = astrometric.radec()
        cases.append({
            "name": name, "body": {"kind": "solarSystem", "body": name}, "observer": observer(site), "utcMs": utc_ms,
            "altitudeDeg": altitude.degrees, "azimuthDeg": azimuth.degrees,
            "ofDate": {"raHours": ra.hours, "decDeg": dec.degrees}, "j2000": {"raHours": ra2000.hours, "decDeg": dec2000.degrees},
        })
    return cases


def phase_cases(rng):
    earth, sun, moon = ephemeris["earth"], ephemeris["sun"], ephemeris["moon"]
    cases = []
    for _ in range(40):
        utc_ms = random_ms(rng, 2020, 2035)
        time = skyfield_time(utc_ms)
        seen = earth.at(time).observe(moon).apparent()
        _, moon_longitude, _ = seen.ecliptic_latlon(epoch="date")
        _, sun_longitude, _ = earth.at(time).observe(sun).apparent().ecliptic_latlon(epoch="date")
        cases.append({
            "utcMs": utc_ms, "illuminatedFraction": float(seen.fraction_illuminated(sun)),
            "elongationDeg": float((moon_longitude.degrees - sun_longitude.degrees) % 360),
        })
    return cases


def magnitude_cases(rng):
    """Apparent magnitudes by skyfield's planetary_magnitude (A. Mallama and J. L. Hilton, Astronomy and Computing 25, 2018)."""
    names = ["Mercury", "Venus", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune"]
    cases = []
    for index in range(140):
        name, utc_ms = names[index % 7], random_ms(rng, 2020, 2035)
        seen = ephemeris["earth"].at(skyfield_time(utc_ms)).observe(ephemeris[TARGETS[name]])
        magnitude = float(planetary_magnitude(seen))
        if np.isnan(magnitude) or seen.separation_from(ephemeris["earth"].at(skyfield_time(utc_ms)).observe(ephemeris["sun"])).degrees < 15:
            continue  # the formula is not given for it, or nobody could see it beside the Sun
        cases.append({"name": name, "utcMs": utc_ms, "magnitude": magnitude})
    return cases


def sidereal_cases(rng):
    cases = []
    for index in range(120):
        utc_ms = random_ms(rng, 2020, 2035) if index < 100 else random_ms(rng, 2036, 2099)
        ut1, tt = erfa_dates(utc_ms)
        longitude = rng.uniform(-180, 180)
        gmst = erfa.gmst06(*ut1, *tt) * 12 / np.pi % 24
        gast = erfa.gst06a(*ut1, *tt) * 12 / np.pi % 24
        cases.append({"utcMs": utc_ms, "longitudeDeg": longitude, "gmstHours": float(gmst), "gastHours": float(gast),
                      "lmstHours": float((gmst + longitude / 15) % 24), "lastHours": float((gast + longitude / 15) % 24)})
    return cases


def rotation_cases(rng):
    """J2000 to the true equator and equinox of date by ERFA's pnm06a: precession and nutation without aberration."""
    cases = []
    for _ in range(60):
        utc_ms = random_ms(rng, 2020, 2035)
        matrix = erfa.pnm06a(*erfa_dates(utc_ms)[1])
        ra, dec = rng.uniform(0, 24), np.degrees(np.arcsin(rng.uniform(-1, 1)))
        lon, lat = erfa.c2s(matrix @ erfa.s2c(ra * np.pi / 12, np.radians(dec)))
        cases.append({"utcMs": utc_ms, "j2000": {"raHours": ra, "decDeg": dec},
                      "ofDate": {"raHours": float(lon * 12 / np.pi % 24), "decDeg": float(np.degrees(lat))}})
    return cases


def angle_cases(rng):
    """Separations and position angles by ERFA's seps and pas, from a thousandth of an arc second to all but antipodal."""
    cases = []
    for index in range(60):
        ra, dec = rng.uniform(0, 24), np.degrees(np.arcsin(rng.uniform(-1, 1)))
        a = (ra * np.pi / 12, np.radians(dec))
        start = erfa.s2c(*a)
        away = erfa.s2c(rng.uniform(0, 2 * np.pi), np.arcsin(rng.uniform(-1, 1)))
        size = 10 ** rng.uniform(-8, 0)
        target = away if index % 3 == 0 else (start + size * away) * (1 if index % 3 == 1 else -1)
        b = tuple(float(x) for x in erfa.c2s(target))
        cases.append({
            "a": {"raHours": ra, "decDeg": dec}, "b": {"raHours": b[0] * 12 / np.pi % 24, "decDeg": float(np.degrees(b[1]))},
            "separationDeg": float(np.degrees(erfa.seps(*a, *b))), "positionAngleDeg": float(np.degrees(erfa.pas(*a, *b)) % 360),
        })
    return cases


def refraction_cases():
    """ERFA's refco at 1010 hPa, 10 C, dry air, 0.574 micrometres; its two-term form is good down to some 15 degrees."""
    a, b = erfa.refco(1010.0, 10.0, 0.0, 0.574)
    cases = []
    for apparent in range(15, 91, 3):
        t = np.tan(np.radians(90 - apparent))
        lift = float(np.degrees(a * t + b * t ** 3))
        cases.append({"airlessAltitudeDeg": apparent - lift, "refractionDeg": lift})
    return cases


def sun_to_2100_cases(rng):
    """The Sun by astropy's built-in ERFA ephemeris (epv00, good to the end of the century), beyond what DE421 covers."""
    cases = []
    for index in range(40):
        site = SITES[(index * 5) % len(SITES)]
        utc_ms = random_ms(rng, 2054, 2099)
        time = astropy_time(utc_ms)
        altaz = get_sun(time).transform_to(AltAz(obstime=time, location=location(site)))
        cases.append({"name": "Sun", "body": {"kind": "solarSystem", "body": "Sun"}, "observer": observer(site), "utcMs": utc_ms,
                      "altitudeDeg": float(altaz.alt.deg), "azimuthDeg": float(altaz.az.deg)})
    return cases


def star_century_cases(rng):
    stars = hipparcos_at_j2000()
    cases = []
    for index in range(60):
        site = SITES[(index * 3) % len(SITES)]
        utc_ms = random_ms(rng, 1973, 2099)
        name = rng.choice([name for name in stars if name not in RADIAL_VELOCITY])
        altitude, azimuth = star_altaz(stars[name], site, utc_ms)
        cases.append({"name": name, "body": {"kind": "fixed", **stars[name]}, "observer": observer(site), "utcMs": utc_ms,
                      "altitudeDeg": altitude, "azimuthDeg": azimuth})
    return cases


def main():
    historical = load.timescale(builtin=True)  # skyfield's own delta-T, since UT1 is what an old civil time was close to
    moving = list(TARGETS)
    rng = seeded("places")
    write("places.json", "astropy (ERFA) for stars and the far Sun; skyfield on JPL DE421 for Sun, Moon and planets; pyerfa for the rest", {
        "stars": star_cases(rng),
        "solarSystem": solar_system_cases(rng, 320, 2020, 2035, skyfield_time, moving),
        "moonPhase": phase_cases(rng),
        "sidereal": sidereal_cases(rng),
        "rotations": rotation_cases(rng),
        "angles": angle_cases(rng),
        "refraction": refraction_cases(),
        "starsCentury": star_century_cases(rng),
        "solarSystemCentury": solar_system_cases(
            rng, 160, 1900, 2052, lambda utc_ms: historical.ut1_jd(UNIX_EPOCH_JD + utc_ms / 86_400_000), moving),
        "sunTo2100": sun_to_2100_cases(rng),
        "magnitudes": magnitude_cases(rng),
    })


if __name__ == "__main__":
    main()
