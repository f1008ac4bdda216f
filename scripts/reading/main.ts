/** For reviewers of the reading vocabulary: `npm run reading [-- FOLDER]` prints what is read of labelled texts, worst first. */
import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { loadTriage } from '../../bot/triage/index.js';
import { loadCorpus } from './corpus.js';
import { floorsMissed, type Floors } from './floors.js';
import { measure, tally, type Measured, type Tally } from './measure.js';
import { timedTexts, timeReading } from './timing.js';
import { judge, readSheet, sheetOf, type Judged } from './sheet.js';

const USAGE = `Measure what is read of labelled texts:
  npm run reading                          over test/reading/corpus, held to its floors
  npm run reading -- FOLDER                over another folder of the same layout
       [--overlay FOLDER] [--show missed|beyond|all] [--json]
       --sheet OUT                       writes a sheet on which people judge each reading, without labels
       --judged SHEET                    counts what they found right and wrong of what is read today
`;
const OWN = 'test/reading/corpus';
/** Readings of each text that is timed. */
const ROUNDS = 7;

const share = (part: number, whole: number): string =>
  whole === 0 ? '   –' : `${((100 * part) / whole).toFixed(0).padStart(3)}%`;

const addUp = (all: readonly Measured[], nameOf: (one: Measured, group: string) => string): Map<string, Tally> => {
  const sums = new Map<string, Tally>();
  for (const one of all)
    for (const [group, { said, read, right, wrong }] of one.groups) {
      const name = nameOf(one, group);
      const sum = sums.get(name) ?? tally();
      sums.set(name, {
        said: sum.said + said,
        read: sum.read + read,
        right: sum.right + right,
        wrong: sum.wrong + wrong,
      });
    }
  return sums;
};

const table = (title: string, sums: ReadonlyMap<string, Tally>): void => {
  console.log(`\n${title.padEnd(36)} said  read        right  wrong`);
  const recall = ({ said, read }: Tally): number => (said === 0 ? 1 : read / said);
  const rows = [...sums].sort(([, a], [, b]) => recall(a) - recall(b));
  for (const [name, { said, read, right, wrong }] of rows)
    console.log(
      `${name.padEnd(36)} ${String(said).padStart(4)}  ${String(read).padStart(4)} ${share(read, said)}   ${String(right).padStart(4)}  ${String(wrong).padStart(5)} ${share(right, right + wrong)}`,
    );
};

const showCases = (all: readonly Measured[], show: string): void => {
  for (const { own, missed, beyond, fallen, causeFound } of all) {
    const parts = [
      ...(show !== 'beyond' && missed.length > 0 ? [`missed ${missed.join(', ')}`] : []),
      ...(show !== 'missed' && beyond.length > 0 ? [`beyond ${beyond.join(', ')}`] : []),
      ...(show !== 'beyond' && causeFound === false ? ['no sensible cause among three'] : []),
      ...(fallen.length > 0 ? [`TRAP ${fallen.join(', ')}`] : []),
    ];
    if (parts.length > 0) console.log(`${own.id}: ${parts.join('; ')}\n    ${JSON.stringify(own.text.slice(0, 400))}`);
  }
};

const showJudged = ({ sums, wrong, open }: Judged): void => {
  for (const [kind, { right, wrong: bad }] of sums)
    console.log(
      `${kind.padEnd(12)} right ${right}, wrong ${bad}: ${((100 * right) / (right + bad)).toFixed(1)} % right`,
    );
  for (const line of wrong) console.log(`wrong: ${line}`);
  for (const line of open) console.log(`not judged: ${line}`);
};

const main = (): number => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      overlay: { type: 'string' },
      show: { type: 'string' },
      sheet: { type: 'string' },
      judged: { type: 'string' },
      json: { type: 'boolean' },
      help: { type: 'boolean' },
    },
  });
  if (values.help === true) {
    console.log(USAGE);
    return 0;
  }
  const folder = positionals[0] ?? OWN;
  const model = loadTriage('knowledge/connection', values.overlay);
  const all = loadCorpus(folder).map((own) => measure(model, own));
  if (all.length === 0) {
    console.error(`no texts in ${folder}\n${USAGE}`);
    return 2;
  }
  if (values.sheet !== undefined) {
    writeFileSync(values.sheet, sheetOf(model, all));
    return 0;
  }
  if (values.judged !== undefined) {
    showJudged(judge(all, readSheet(readFileSync(values.judged, 'utf8'))));
    return 0;
  }
  if (values.show !== undefined) showCases(all, values.show);
  const traps = all.filter(({ own }) => own.not.length > 0);
  const withCause = all.filter(({ own, causeFound }) => own.kind === 'log' && causeFound !== null);
  const sums = addUp(
    all.filter(({ own }) => own.kind !== 'trap'),
    ({ own }, group) => `${own.kind} ${group}`,
  );
  const figures = {
    sums: Object.fromEntries(sums),
    traps: { all: traps.length, fallen: traps.filter(({ fallen }) => fallen.length > 0).length },
    causes: { all: withCause.length, found: withCause.filter(({ causeFound }) => causeFound === true).length },
  };
  if (values.json === true) console.log(JSON.stringify(figures));
  else {
    table(
      'by class, worst first',
      addUp(
        all.filter(({ own }) => own.kind !== 'trap'),
        ({ own }) => own.cls,
      ),
    );
    table('by kind', sums);
    const { medianMs, p99Ms, ownP99Ms, slowest } = timeReading(model.reading, timedTexts(folder), ROUNDS);
    console.log(
      `\ntraps fallen into: ${figures.traps.fallen} of ${figures.traps.all}` +
        `\nlogs with a sensible cause among the first three: ${figures.causes.found} of ${figures.causes.all}` +
        `\nreading 8,000 characters, processor time: median ${medianMs.toFixed(1)} ms, p99 ${p99Ms.toFixed(1)} ms (target 10), of the texts by their own medians ${ownP99Ms.toFixed(1)} ms, ` +
        `slowest ${slowest.map(({ name, ms }) => `${name} ${ms.toFixed(1)}`).join(', ')}`,
    );
  }
  if (folder !== OWN) return 0;
  const floors = JSON.parse(readFileSync(`${OWN}/floors.json`, 'utf8')) as Floors;
  const missed = floorsMissed(figures, floors);
  for (const line of missed) console.error(`below the floor: ${line}`);
  return missed.length === 0 ? 0 : 1;
};

process.exitCode = main();
