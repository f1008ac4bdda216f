/** The bench's figures as lines, worst first. */
import { isGood, within, type Result } from './play.js';

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

const grouped = (results: readonly Result[], key: (result: Result) => string): [string, Result[]][] => {
  const groups = new Map<string, Result[]>();
  for (const result of results) groups.set(key(result), [...(groups.get(key(result)) ?? []), result]);
  return [...groups];
};

const courseOf = ({ job, end, steps, played }: Result): string =>
  `  ${job.name} [${job.world.path}, ${job.world.system}, ${job.world.client}] ${end} after ${steps}: ` +
  `${played.turns.map(({ kind, id, answer }) => `${kind === 'try' ? 'TRY ' : ''}${id}=${answer}`).join(' ')} | ` +
  played.standing
    .slice(0, 3)
    .map(({ faultId, probability }) => `${faultId} ${percent(probability)}`)
    .join(', ');

const SHOWN = 45;

const shareOf = (results: readonly Result[], is: (result: Result) => boolean): number =>
  results.filter(is).length / Math.max(1, results.length);

/** The figures alone. */
export const figures = (results: readonly Result[]): string[] => {
  const singles = results.filter(({ job }) => job.kind === 'one');
  const pairs = results.filter(({ job }) => job.kind === 'pair');
  const offList = results.filter(({ job }) => job.kind === 'off-list');
  const listed = [...singles, ...offList];
  return [
    `Single faults: ${singles.length} walks, ${percent(within(singles, 10))} cured or rightly handed on in ten steps; mean ${mean(singles.map(({ steps }) => steps)).toFixed(2)} steps`,
    `Off the list: ${offList.length} walks, ${percent(within(offList, 10))} rightly handed on in ten steps`,
    `Off the list the right part named at hand-on: ${percent(shareOf(offList, ({ located }) => located))}; an unknown of it among the first three: ${percent(shareOf(offList, (one) => one.standsThere))}; the same question twice in a row: ${results.reduce((sum, { askedTwice }) => sum + askedTwice, 0)}`,
    `Singles and off-list together: ${percent(within(listed, 10))} in ten steps (asked: 93 %)`,
    `Pairs: ${pairs.length} walks, ${percent(within(pairs, 16))} in sixteen steps (asked: 80 %)`,
    `Run out on a known cause: ${results.filter(({ ranOutOnKnown }) => ranOutOnKnown).length} (asked: 0)`,
  ];
};

export const report = (results: readonly Result[]): string[] => {
  const singles = results.filter(({ job }) => job.kind === 'one');
  const unknown = [...new Set(results.flatMap(({ unknownChecks }) => unknownChecks))];
  const families = grouped(results, ({ job }) => job.family)
    .map(([family, all]) => ({ family, all, good: all.filter(isGood).length / all.length }))
    .sort((a, b) => a.good - b.good);
  const worstFaults = grouped(singles, ({ job }) => job.name)
    .map(([name, all]) => ({ name, all, good: within(all, 10) }))
    .filter(({ good }) => good < 1)
    .sort((a, b) => a.good - b.good || mean(b.all.map(({ steps }) => steps)) - mean(a.all.map(({ steps }) => steps)));
  return [
    'Families, worst first: cured, rightly handed on, wrongly handed on, lost; mean steps',
    ...families.map(({ family, all }) => {
      const share = (end: Result['end']): string =>
        percent(all.filter((result) => result.end === end).length / all.length);
      return `  ${family} (${all.length}): ${share('cured')}, ${share('handed on rightly')}, ${share('handed on wrongly')}, ${share('lost')}; ${mean(all.map(({ steps }) => steps)).toFixed(1)}`;
    }),
    '',
    'Faults not always served within ten steps, worst first',
    ...worstFaults.map(
      ({ name, all, good }) =>
        `  ${name}: ${percent(good)} of ${all.length}, ${mean(all.map(({ steps }) => steps)).toFixed(1)} steps`,
    ),
    '',
    'Walks that went wrong',
    ...results
      .filter((result) => !isGood(result))
      .slice(0, SHOWN)
      .map(courseOf),
    '',
    'Run out while one cause stood at 60 % or more',
    ...results
      .filter(({ ranOutOnKnown }) => ranOutOnKnown)
      .slice(0, SHOWN)
      .map(courseOf),
    '',
    `No rule for: ${unknown.length === 0 ? 'none' : unknown.join(', ')}`,
    ...figures(results),
  ];
};
