/**
 * Fits the weights of `bot/reading/outcome`: `npx tsx scripts/reading/fit-outcomes.ts [--write]`. The lines are members' words on a
 * remedy, each with what it tells, in outcomes/*.jsonl; see outcomes/README.md. Prints how right a line is judged by what was fitted to
 * the others, and the held-out lines of test/reading/corpus by what was fitted to all. Takes some seconds.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encodeWeights, NOTHING, type Weights } from '../../bot/reading/examples/weights.js';
import { saidText } from '../../bot/reading/answers/said-words.js';
import { likelyOutcomes } from '../../bot/reading/outcome/likely-outcome.js';
import { outcomeMarks } from '../../bot/reading/outcome/outcome-marks.js';
import { loadTriage } from '../../bot/triage/index.js';
import { fitWeights, type FitHow, type Row } from './fit-weights.js';
import { linesIn } from './json-lines.js';
import { readOutcomes, type OutcomeLine } from './outcomes.js';

const KNOWLEDGE = 'knowledge/connection';
const FOLDER = 'scripts/reading/outcomes';
const SENTENCES = 'scripts/reading/examples';
const HELD = 'test/reading/corpus/outcomes';
const OUT = `${KNOWLEDGE}/reading/outcomes.bin`;
const HOW: FitHow = { rounds: 20, rate: 0.15, shrink: 1e-3, leastRows: 2, leastWeight: 0.15 };
const PARTS = 5;

const { lexicon } = loadTriage(KNOWLEDGE).reading.sayings;

const outcomesIn = (folder: string): readonly OutcomeLine[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.jsonl'))
    .flatMap((name) => readOutcomes(readFileSync(join(folder, name), 'utf8')));

const rowOf = ({ text, outcome }: OutcomeLine, weight = 1): Row => ({
  marks: [...outcomeMarks(saidText(lexicon, text))],
  tells: outcome === NOTHING ? [] : [outcome],
  weight,
});

const lines = outcomesIn(FOLDER);
const rows = lines.map((line) => rowOf(line));
const met = new Map<string, number>();
for (const { marks } of rows) for (const mark of marks) met.set(mark, (met.get(mark) ?? 0) + 1);

/** Sentences that describe the gear and its doings, whatever was tried: they tell of no outcome. */
const DESCRIBES = new Set(
  (
    'adapter-light board-light board-version bt-kind bt-light cable-length changed-last chip-text component controller-present ' +
    'controller-screen earlier-lead gear-sound handset-shows house-band lead-route mount-type nine-pins package-kind patience ' +
    'plug-polarity port-settings serial-lead signal socket-used supply-amps usb-cable when-drops worked-before ' +
    'works-with-phone works-with-handset controller-lead power-light battery-volts'
  ).split(' '),
);
/** They are many. */
const WEIGHT_OF_DESCRIBING = 0.06;
const describing: readonly Row[] = linesIn<{ readonly what: string; readonly text: string }>(SENTENCES, 'sentences-')
  .filter(({ what }) => DESCRIBES.has(what))
  .map(({ text }) => rowOf({ remedy: '', outcome: NOTHING, text }, WEIGHT_OF_DESCRIBING))
  .map((row) => ({ ...row, marks: row.marks.filter((mark) => (met.get(mark) ?? 0) >= HOW.leastRows) }));

interface Judged extends OutcomeLine {
  readonly likely: ReadonlyMap<string, number>;
}

const judge = (weights: Weights, lines: readonly OutcomeLine[]): readonly Judged[] =>
  lines.map((line) => ({ ...line, likely: likelyOutcomes(weights, saidText(lexicon, line.text)) }));

const likeliest = ({ likely }: Judged): readonly [string, number] =>
  [...likely].reduce((best, one) => (one[1] > best[1] ? one : best), [NOTHING, 0]);

const LEVELS = [0.5, 0.6, 0.7, 0.8, 0.9] as const;

const report = (name: string, judged: readonly Judged[]): void => {
  const right = judged.filter((one) => likeliest(one)[0] === one.outcome).length;
  console.log(`${name}: likeliest right ${right} of ${judged.length}; at ${LEVELS.join(', ')} right of all, wrong:`);
  for (const outcome of new Set(judged.map((one) => one.outcome))) {
    const all = judged.filter((one) => one.outcome === outcome).length;
    const at = LEVELS.map((level) => {
      const taken = judged.filter(({ likely }) => (likely.get(outcome) ?? 0) >= level);
      const hits = taken.filter((one) => one.outcome === outcome).length;
      return `${hits} +${taken.length - hits}`;
    });
    console.log(`  ${(outcome === NOTHING ? 'nothing' : outcome).padEnd(10)} ${at.join(', ')} of ${all}`);
  }
  if (!process.argv.includes('--wrong')) return;
  for (const one of judged) {
    const [best, sureness] = likeliest(one);
    if (best !== one.outcome) console.log(`    ${one.outcome} → ${best} ${sureness.toFixed(2)}: ${one.text}`);
  }
};

const parted = Array.from({ length: PARTS }, (_, part) =>
  judge(
    fitWeights([...rows.filter((_row, i) => i % PARTS !== part), ...describing], HOW),
    lines.filter((_line, i) => i % PARTS === part),
  ),
);
report('left out in turn', parted.flat());
const weights = fitWeights([...rows, ...describing], HOW);
for (const name of readdirSync(HELD))
  report(name, judge(weights, readOutcomes(readFileSync(join(HELD, name), 'utf8'))));
const bytes = encodeWeights(weights);
console.log(
  `${lines.length} lines, ${weights.marks.length} marks, ${weights.steps.length} weights, ${bytes.length} bytes`,
);
if (process.argv.includes('--write')) writeFileSync(OUT, bytes);
