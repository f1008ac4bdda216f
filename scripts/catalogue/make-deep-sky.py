"""Writes knowledge/catalogue/deep-sky.csv from the OpenNGC database that the PyOngc package ships.

Run from the repository's root: python scripts/catalogue/make-deep-sky.py
Needs: PyOngc (for its ongc.db alone) and astropy (pip).
"""
import csv
import importlib.metadata
import math
import pathlib
import re
import sqlite3
import sys

import pyongc
from astropy import units as u
from astropy.coordinates import SkyCoord, get_constellation

ROOT = pathlib.Path(__file__).resolve().parents[2]
OUT = ROOT / 'knowledge/catalogue/deep-sky.csv'
MORE = ROOT / 'scripts/catalogue/more-objects.csv'
NAMES = ROOT / 'scripts/catalogue/common-names.csv'
NUMBERS = ROOT / 'scripts/catalogue/more-designations.csv'
DROPPED = ROOT / 'scripts/catalogue/dropped-names.csv'
DIFFERENCES = ROOT / 'scripts/catalogue/differences.csv'
CORRECTIONS = ROOT / 'scripts/catalogue/corrections.csv'

PREFIXES = {'Mel': 'Mel', 'Cl': 'Cr', 'B': 'Barnard', 'H': 'Harvard', 'C': 'C'}
# OpenNGC writes one prefix for two catalogues of clusters; these are the trade's usual abbreviations.


def designation(name: str) -> str:
    """OpenNGC's padded name as people write it: 'NGC0001' -> 'NGC 1', 'IC0080 NED01' -> 'IC 80 NED01'."""
    m = re.match(r'^(NGC|IC|ESO|HCG|MWSC|PGC|UGC|Mel|Cl|B|H|C|M)0*(\d[\d-]*)(.*)$', name)
    if not m:
        sys.exit(f'cannot read the designation {name!r}')
    prefix, number, rest = m.groups()
    if prefix == 'ESO':
        return 'ESO ' + name[3:]
    rest = rest.strip()
    return f'{PREFIXES.get(prefix, prefix)} {number}{(" " + rest) if rest.startswith("NED") else rest}'


def tidy_common(name: str) -> str:
    name = name.strip()
    name = re.sub(r'^the ', '', name)
    return name if name.startswith('h ') else name[0].upper() + name[1:]


GREEK = {'omi': 'Omicron', 'gam': 'Gamma', 'tet': 'Theta', 'lam': 'Lambda', 'rho': 'Rho', 'eta': 'Eta', 'chi': 'Chi',
         'omega': 'Omega', 'kappa': 'Kappa'}


def spell_greek(name: str) -> str:
    first, _, rest = name.partition(' ')
    return f'{GREEK[first.lower()]} {rest}' if first.lower() in GREEK and rest else name


def galaxy_type(hubble: str | None) -> str:
    """The class in words, from the Hubble type."""
    h = (hubble or '').strip()
    if h.startswith('E'):
        return 'lenticular galaxy' if h.startswith('E-S0') else 'elliptical galaxy'
    if h.startswith('S0'):
        return 'lenticular galaxy'
    if h.startswith(('I', 'Sm', 'SBm', 'SABm')):
        return 'irregular galaxy'
    if h.startswith('SB'):
        return 'barred spiral galaxy'
    if h.startswith(('S?',)):
        return 'galaxy'
    if h.startswith('S'):
        return 'spiral galaxy'
    return 'galaxy'


KINDS = {
    '*': ('star', 'star'),
    '**': ('double-star', 'double star'),
    '*Ass': ('asterism', 'group of stars'),
    'OCl': ('open-cluster', 'open cluster'),
    'GCl': ('globular-cluster', 'globular cluster'),
    'Cl+N': ('open-cluster', 'open cluster with nebula'),
    'GPair': ('galaxy', 'pair of galaxies'),
    'GTrpl': ('galaxy', 'triplet of galaxies'),
    'GGroup': ('galaxy', 'group of galaxies'),
    'PN': ('planetary-nebula', 'planetary nebula'),
    'HII': ('nebula', 'emission nebula'),
    'EmN': ('nebula', 'emission nebula'),
    'Neb': ('nebula', 'nebula'),
    'RfN': ('nebula', 'reflection nebula'),
    'DrkN': ('dark-nebula', 'dark nebula'),
    'SNR': ('supernova-remnant', 'supernova remnant'),
    'Nova': ('star', 'nova'),
    'Other': ('other', 'object of unknown type'),
}


# Where OpenNGC files an object under the less used of its two numbers.
PREFERRED = {'NGC 2239': 'NGC 2244', 'NGC 1909': 'IC 2118'}


def number(value) -> str:
    return '' if value is None else f'{value:.2f}'.rstrip('0').rstrip('.')


def read_corrections() -> dict[str, list[str]]:
    with CORRECTIONS.open(encoding='utf-8') as f:
        rows = list(csv.reader(l for l in f if not l.startswith('#')))
    found = {row[0]: row for row in rows}
    if len(found) < len(rows):
        sys.exit('corrections.csv has an object twice')
    return found


def read_dropped() -> dict[str, set[str]]:
    with DROPPED.open(encoding='utf-8') as f:
        return {row[0]: {n.lower() for n in row[1].split(';')} for row in csv.reader(l for l in f if not l.startswith('#'))}


def colour(hubble: str | None) -> float:
    """Mean B-V of a galaxy's type (means of the Third Reference Catalogue of Bright Galaxies, from memory)."""
    h = (hubble or '').replace('B', '').replace('A', '').strip()
    if h.startswith(('E', 'S0')):
        return 0.9
    if h.startswith(('Sa', 'Sab', 'Sb')) and not h.startswith('Sbc'):
        return 0.8
    if h.startswith(('Sbc', 'Sc')) and not h.startswith('Scd'):
        return 0.6
    return 0.45


def galaxy_magnitude(row) -> tuple[str, str]:
    """OpenNGC's V, or, where it cannot be beside its own B (bluer than any galaxy, or redder), one from B; and the reason."""
    v, b = row['vmag'], row['bmag']
    if row['type'] != 'G' or v is None or b is None or 0.2 <= b - v <= 1.5:
        return number(v), ''
    return number(b - colour(row['hubble'])), f'V cannot be {v:.2f} where B is {b:.2f}: taken from B and the mean colour of the type'


def corrected(ours: str, theirs: str) -> str:
    return '' if ours == '-' else ours or theirs



def main() -> None:
    db = sqlite3.connect(pathlib.Path(pyongc.__file__).with_name('ongc.db'))
    db.row_factory = sqlite3.Row
    rows = {r['name']: r for r in db.execute('SELECT * FROM objects')}

    def padded(kind: str, number: str) -> str:
        m = re.match(r'^0*(\d+)(.*)$', number.strip())
        if not m:
            sys.exit(f'cannot read the cross reference {kind} {number!r}')
        return f'{kind}{int(m[1]):04d}{m[2]}'

    def follow(row) -> str | None:
        """Where a duplicate entry points, through chains."""
        seen = set()
        while row is not None and row['type'] == 'Dup' and row['name'] not in seen:
            seen.add(row['name'])
            if row['messier'] and row['name'] == 'M102':
                return padded('NGC', '5457')
            target = None
            for kind, field in (('NGC', 'ngc'), ('IC', 'ic')):
                if row[field]:
                    target = rows.get(padded(kind, row[field].split(',')[0]))
                    if target is not None:
                        break
            row = target
        return row['name'] if row is not None else None

    aliases: dict[str, list[str]] = {}
    unresolved = []
    for row in rows.values():
        if row['type'] == 'Dup':
            target = follow(row)
            if target is None:
                unresolved.append(row['name'])
                continue
            if row['name'] == 'M102':
                # Which galaxy Messier's 102nd entry was is not settled: both carry the number, so that a look-up asks.
                aliases.setdefault('NGC5457', []).append('M 102')
                aliases.setdefault('NGC5866', []).append('M 102')
            else:
                aliases.setdefault(target, []).append(designation(row['name']))
    if unresolved:
        sys.exit(f'duplicates that point nowhere: {unresolved}')

    extra: dict[str, tuple[str, list[str]]] = {}
    with NAMES.open(encoding='utf-8') as f:
        for line in csv.reader(l for l in f if not l.startswith('#')):
            extra[line[0].replace('Cl ', 'Cr ')] = (line[1], line[2].split(';'))

    corrections = read_corrections()
    mended = set()
    dropped = read_dropped()
    with NUMBERS.open(encoding='utf-8') as f:
        numbers = {row[0]: row for row in csv.reader(l for l in f if not l.startswith('#'))}
    differences = []
    out = []
    nonexistent = []
    used = set()
    for row in rows.values():
        name = designation(row['name'])
        if row['type'] == 'NonEx':
            nonexistent.append(name)
            continue
        if row['type'] == 'Dup':
            continue
        kind, text = KINDS[row['type']] if row['type'] != 'G' else ('galaxy', galaxy_type(row['hubble']))
        const = 'Ser' if row['const'] in ('Se1', 'Se2') else row['const']
        messier = str(int(row['messier'])) if row['messier'] else ''
        caldwell = ''
        m = re.match(r'^C(\d{3})$', row['name'])
        if m:
            caldwell = str(int(m[1]))
        for ident in (row['identifiers'] or '').split(','):
            m = re.match(r'^C (\d{3})$', ident.strip())
            if m:
                caldwell = str(int(m[1]))
        others = list(aliases.get(row['name'], []))
        for ident in (row['identifiers'] or '').split(','):
            m = re.match(r'^(Mel|Cl|SH 2|B|LBN) ?-?0*(\d+)$', ident.strip().replace('SH 2-', 'SH 2 '))
            if m:
                prefix = {'SH 2': 'Sh2', 'Cl': 'Cr'}.get(m[1], m[1])
                others.append(f'Sh2-{m[2]}' if prefix == 'Sh2' else f'{prefix} {m[2]}')
        common = [] if kind == 'star' else [spell_greek(tidy_common(n)) for n in (row['commonnames'] or '').split(',') if n.strip()]
        common = [c for c in common if c.lower() not in dropped.get(name, set())]
        for known in (name, *aliases.get(row['name'], [])):
            if known not in extra:
                continue
            used.add(known)
            want, names = extra[known]
            if want != const:
                sys.exit(f'{name}: common-names.csv says {want}, OpenNGC says {const}')
            # Ours first: they are the names in everyday use.
            common = names + [c for c in common if c.lower() not in (n.lower() for n in names)]
        also = 'nebula' if row['type'] == 'Cl+N' else ''
        size = ('', '') if kind in ('star', 'double-star') else (number(row['majax']), number(row['minax']))
        magnitude, why = galaxy_magnitude(row)
        original = [kind, number(row['vmag']), *size]
        better = corrections.get(PREFERRED.get(name, name))
        if better:
            mended.add(better[0])
            if better[1] != const:
                sys.exit(f'{name}: corrections.csv says {better[1]}, OpenNGC says {const}')
            if better[2]:
                kind, text, also = better[2:5]
            magnitude = corrected(better[5], magnitude)
            size = (corrected(better[6], size[0]), better[7] if better[6] else size[1])
            why = better[8]
        for what, theirs, taken in zip(('kind', 'magnitude', 'major axis', 'minor axis'), original, (kind, magnitude, *size)):
            if theirs != taken:
                differences.append([PREFERRED.get(name, name), what, theirs, taken, why])
        if PREFERRED.get(name, name) in numbers:
            further = numbers.pop(PREFERRED.get(name, name))
            if further[1] != const:
                sys.exit(f'{name}: more-designations.csv says {further[1]}, OpenNGC says {const}')
            others += further[2].split(';')
        if name in PREFERRED:
            others = [name if o == PREFERRED[name] else o for o in others]
            name = PREFERRED[name]
        out.append([
            name, kind, text, also, f'{math.degrees(row["ra"]):.5f}', f'{math.degrees(row["dec"]):.5f}', const, magnitude, *size,
            messier, caldwell, ';'.join(common), ';'.join(others),
        ])
    if numbers:
        sys.exit(f'more-designations.csv names objects that are not there: {sorted(numbers)}')
    if set(corrections) - mended:
        sys.exit(f'corrections.csv names objects that are not there: {sorted(set(corrections) - mended)}')
    if set(extra) - used:
        sys.exit(f'common-names.csv names objects that are not there: {sorted(set(extra) - used)}')

    with MORE.open(encoding='utf-8') as f:
        for line in csv.reader(l for l in f if not l.startswith('#')):
            within = get_constellation(SkyCoord(float(line[4]) * u.deg, float(line[5]) * u.deg), short_name=True)
            if within != line[6]:
                sys.exit(f'{line[0]}: more-objects.csv says {line[6]}, its position is in {within}')
            out.append([*line[:4], f'{float(line[4]):.5f}', f'{float(line[5]):.5f}', *line[6:]])

    def order(r):
        prefix, number = re.match(r'^([0-9A-Za-z]+)[ -](\d+)', r[0]).groups()
        rank = {'NGC': 0, 'IC': 1}.get(prefix, 2)
        return (rank, prefix, int(number), r[0])

    out.sort(key=order)
    with OUT.open('w', encoding='utf-8', newline='') as f:
        version = importlib.metadata.version('PyOngc')
        f.write(
            f'# Deep-sky objects: all of NGC and IC, OpenNGC\'s addendum, and a few more. {len(out)} objects.\n'
            f'# Source: OpenNGC by Mattia Verga (https://github.com/mattiaverga/OpenNGC), as shipped in PyOngc {version}.\n'
            '# Licence: CC BY-SA 4.0 (this file too). Changes: fewer columns, other units and words, duplicates folded into other names.\n'
            '# Further common names: scripts/catalogue/common-names.csv (common practice, values from memory);\n'
            '# the few more: scripts/catalogue/more-objects.csv (common practice, values from memory);\n'
            '# further designations: scripts/catalogue/more-designations.csv (from memory);\n'
            '# other kinds, magnitudes and sizes: scripts/catalogue/corrections.csv (each with its reason).\n'
            '# Generator: python scripts/catalogue/make-deep-sky.py\n'
            '# Columns: name, kind, kind in words, second kind, right ascension and declination (degrees, J2000), constellation (IAU), visual magnitude,\n'
            '# major axis, minor axis (arcminutes), Messier number, Caldwell number, common names (;), other designations (;). Empty: not known.\n'
            f'# nonexistent: {";".join(sorted(nonexistent))}\n')
        csv.writer(f, lineterminator='\n').writerows(out)
    with DIFFERENCES.open('w', encoding='utf-8', newline='') as f:
        f.write(
            '# Where deep-sky.csv does not follow OpenNGC: what it says, what was taken, why. Made by make-deep-sky.py from corrections.csv (its head says\n'
            '# what "published" is) and from OpenNGC\'s own blue magnitudes; Harris: W. E. Harris, "A Catalog of Parameters for Globular Clusters in the\n'
            '# Milky Way", Astronomical Journal 112, 1487, 1996 (2010 edition), from memory. Licence: CC BY-SA 4.0.\n'
            '# Columns: designation, field, OpenNGC, taken, reason\n')
        csv.writer(f, lineterminator='\n').writerows(differences)
    print(f'{DIFFERENCES}: {len(differences)}')
    print(f'{OUT}: {len(out)} objects, {len(nonexistent)} nonexistent, {sum(len(a) for a in aliases.values())} duplicates folded')


main()
