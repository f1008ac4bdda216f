/** How cost grows with the catalogue and with the number of clubs: ratios that stay near what the growth allows. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { isProblem } from '../../bot/ground/problem.js';
import { completeTargets, loadCatalogue, resolveTarget, type Catalogue } from '../../bot/catalogue/index.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { CONSOLE_ASKER } from '../../bot/platforms/console/session.js';
import { openStore } from '../../bot/store/open-store.js';
import { spread, timed, type BenchRow } from './measure.js';

const NOW_UTC_MS = Date.UTC(2026, 10, 25, 18);
const CLUBS = 2000;

/** The shipped catalogue cut to every fourth object, or with every deep-sky object four times under other numbers. */
const resized = (folder: string, times: 0.25 | 4): Catalogue => {
  const made = mkdtempSync(path.join(tmpdir(), 'pierhand-catalogue-'));
  try {
    for (const file of ['deep-sky.csv', 'stars.csv']) {
      const lines = readFileSync(path.join(folder, file), 'utf8')
        .split('\n')
        .filter((line) => line !== '');
      const rows = lines.filter((line) => !line.startsWith('#'));
      const kept =
        times < 1
          ? rows.filter((_, i) => i % 4 === 0)
          : [
              ...rows,
              ...[1, 2, 3].flatMap((copy) =>
                rows.map((line, i) =>
                  file === 'stars.csv'
                    ? [`${200_000 * copy + i}`, ...line.split(',').slice(1, 8), '', '', '', '', ''].join(',')
                    : [`NGC ${10_000 * copy * 2 + i}`, ...line.split(',').slice(1, 10), '', '', '', ''].join(','),
                ),
              ),
            ];
      writeFileSync(
        path.join(made, file),
        `${[...lines.filter((line) => line.startsWith('#')), ...kept].join('\n')}\n`,
      );
    }
    return loadCatalogue(made);
  } finally {
    rmSync(made, { recursive: true, force: true });
  }
};

const catalogueRows = async (deps: Deps, folder: string): Promise<BenchRow[]> => {
  const rows: BenchRow[] = [];
  for (const [size, catalogue] of [
    ['a quarter of it', resized(folder, 0.25)],
    ['as shipped', deps.catalogue],
    ['four times it', resized(folder, 4)],
  ] as const) {
    const said = `catalogue ${size} (${catalogue.sweep.length} objects)`;
    const ask = async (line: string): Promise<void> => {
      const outcome = await runLine({ ...deps, catalogue }, line, {
        asker: CONSOLE_ASKER,
        nowUtcMs: NOW_UTC_MS,
        onError: (error) => {
          throw error as Error;
        },
      });
      if (isProblem(outcome)) throw new Error(`${line}: ${outcome.message}`);
    };
    rows.push(
      spread(
        `${said}: tonight`,
        'ms',
        await timed(60, (run) => ask(`tonight site:${(run % 12) * 10 - 55},${run * 5 - 150} brighter:20 above:0`)),
        null,
      ),
    );
    rows.push(
      spread(
        `${said}: completion`,
        'ms',
        await timed(600, (run) => completeTargets(catalogue, ['n', 'ngc 7', 'alph', 'zz', 'm 1'][run % 5] ?? '', 25)),
        null,
      ),
    );
    rows.push(
      spread(
        `${said}: look-up`,
        'ms',
        await timed(600, (run) =>
          resolveTarget(
            catalogue,
            ['Aldebaran', 'NGC 7331', 'α Ori', 'Andromida', '05h34m32s +22°00′52″'][run % 5] ?? '',
          ),
        ),
        null,
      ),
    );
  }
  return rows;
};

/** Questions that read and write the store of a club, as clubs are added: what one club asks must not cost more for the others. */
const clubRows = async (deps: Deps): Promise<BenchRow[]> => {
  const store = await openStore({ memory: true });
  const rows: BenchRow[] = [];
  try {
    const of = { ...deps, store };
    const asks = async (club: number): Promise<void> => {
      const asker = {
        ...CONSOLE_ASKER,
        memberId: `discord:${club}`,
        clubId: `discord:club-${club}`,
        isPrivate: false,
      } as const;
      const outcome = await runLine(of, 'sidereal', {
        asker,
        nowUtcMs: NOW_UTC_MS,
        onError: (error) => {
          throw error as Error;
        },
      });
      if (isProblem(outcome)) throw new Error(outcome.message);
    };
    let there = 0;
    for (const clubs of [20, 200, CLUBS]) {
      for (; there < clubs; there++) {
        const site = {
          name: 'Fenwold Common',
          latitudeDeg: 52.71,
          longitudeDeg: 0.12,
          elevationM: 4,
          zone: 'Europe/London',
          horizon: null,
          isDefault: true,
        };
        await store.sites.put({ kind: 'club', id: `discord:club-${there}` }, site);
        await store.sites.put({ kind: 'member', id: `discord:${there}` }, { ...site, name: 'Quarry Field' });
      }
      rows.push(
        spread(
          `${clubs} clubs with sites of their own: sidereal at one's usual site`,
          'ms',
          await timed(400, (run) => asks((run * 7) % clubs)),
          10,
        ),
      );
    }
    const [first, , last] = rows;
    if (first !== undefined && last !== undefined)
      rows.push({
        name: `the same, ${CLUBS} clubs against 20`,
        unit: 'times',
        median: last.median / first.median,
        p99: last.p99 / first.p99,
        target: null,
        met: null,
      });
  } finally {
    await store.close();
  }
  return rows;
};

export const growthRows = async (deps: Deps, catalogueFolder: string): Promise<BenchRow[]> => [
  ...(await catalogueRows(deps, catalogueFolder)),
  ...(await clubRows(deps)),
];
