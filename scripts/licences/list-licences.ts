/** Lists the licences of every package that ships with the bot and of every data file, as deploy/LICENCES.md; `--check` compares instead. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';

const OUTPUT = 'deploy/LICENCES.md';
/** Licences that may ship: permissive ones, weak copyleft by file, and public domain. Anything else stops the build to be looked at. */
const ACCEPTED =
  /^(?:MIT|ISC|BSD-[23]-Clause|0BSD|Apache-2\.0|MPL-2\.0|CC0-1\.0|Unlicense|BlueOak-1\.0\.0|Python-2\.0)$/u;

interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
}

const accepted = (expression: string): boolean =>
  expression
    .replace(/[()]/gu, '')
    .split(/ OR /u)
    .some((licence) => ACCEPTED.test(licence.trim()));

const packages = (): { readonly rows: string[]; readonly unknown: string[] } => {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    readonly packages: Readonly<Record<string, LockedPackage>>;
  };
  const shipped = Object.entries(lock.packages)
    .filter(([folder, { dev }]) => folder !== '' && dev !== true)
    .map(([folder, { version, license }]) => ({
      name: folder.replace(/^.*node_modules\//u, ''),
      version: version ?? '?',
      licence: license ?? 'none given',
    }));
  const unique = [...new Map(shipped.map((entry) => [`${entry.name} ${entry.version}`, entry])).values()].sort(
    (a, b) => a.name.localeCompare(b.name) || a.version.localeCompare(b.version),
  );
  return {
    rows: unique.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`),
    unknown: unique.filter(({ licence }) => !accepted(licence)).map(({ name, licence }) => `${name}: ${licence}`),
  };
};

/** The comment lines at the head of a data file: its source and licence in its own words. */
const headOf = (file: string): readonly string[] => {
  const bytes = readFileSync(file);
  const text = (file.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8');
  const lines = text.split('\n');
  const end = lines.findIndex((line) => !line.startsWith('#'));
  return lines
    .slice(0, end === -1 ? lines.length : end)
    .map((line) => line.replace(/^#\s?/u, '').trimEnd())
    .filter((line) => line !== '');
};

/** Beside a file of bare numbers: its head, then the licence in full. */
const BESIDE = /-licence\.txt$/u;

const dataFiles = ['knowledge/catalogue', 'knowledge/connection/reading', 'knowledge/places']
  .flatMap((folder) =>
    readdirSync(folder)
      .sort()
      .map((name) => path.posix.join(folder, name)),
  )
  .filter((file) => /\.(?:csv|tsv|gz)$/u.test(file) || BESIDE.test(file));

const { rows, unknown } = packages();
const withoutHead = dataFiles.filter((file) => !headOf(file).some((line) => /licen[cs]e|public domain/iu.test(line)));
const page = [
  '# Licences of what ships',
  '',
  "Made by `npm run licences`; do not edit. Pierhand's own code: MIT, see LICENSE. Packages used only for development are not listed.",
  '',
  '## Data',
  '',
  ...dataFiles.flatMap((file) => [
    `### ${file.replace(BESIDE, '.bin')}`,
    '',
    ...headOf(file).map((line) => `> ${line}`),
    '',
  ]),
  '### bot/reply/fonts',
  '',
  '> DejaVu Sans; its licence (Bitstream Vera and Arev, free to use and embed) lies beside it in bot/reply/fonts/LICENSE.',
  '',
  '## Packages',
  '',
  '| package | version | licence |',
  '|---|---|---|',
  ...rows,
  '',
].join('\n');

const problems = [
  ...unknown.map((entry) => `a licence that nobody has looked at: ${entry}`),
  ...withoutHead.map((file) => `${file} names neither licence nor public domain in the comment lines at its head`),
];
if (process.argv.includes('--check')) {
  if (readFileSync(OUTPUT, 'utf8') !== page)
    problems.push(`${OUTPUT} is not what npm run licences makes; run it and commit the result`);
} else {
  writeFileSync(OUTPUT, page);
}
for (const entry of problems) process.stderr.write(`${entry}\n`);
process.stdout.write(
  `${rows.length} packages and ${dataFiles.length} data files looked at, ${problems.length} problems\n`,
);
process.exitCode = problems.length > 0 ? 1 : 0;
