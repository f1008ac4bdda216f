/**
 * Fits the weights by which lines about the talk itself are known: `npx tsx scripts/reading/fit-talk.ts [--write]`. The lines are
 * talk/*.jsonl; see talk/README.md. Prints how the held-out lines of test/reading/corpus/talk are judged. Takes some seconds.
 */
import { writeFileSync } from 'node:fs';
import { saidText } from '../../bot/reading/answers/said-words.js';
import { encodeWeights, NOTHING } from '../../bot/reading/examples/weights.js';
import { TALK_KINDS } from '../../bot/reading/index.js';
import { likelyOutcomes } from '../../bot/reading/outcome/likely-outcome.js';
import { outcomeMarks } from '../../bot/reading/outcome/outcome-marks.js';
import { loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { fitWeights, type FitHow, type Row } from './fit-weights.js';
import { linesIn } from './json-lines.js';

const KNOWLEDGE = 'knowledge/connection';
const OUT = `${KNOWLEDGE}/reading/talk.bin`;
const HOW: FitHow = { rounds: 40, rate: 0.5, shrink: 2e-4, leastRows: 2, leastWeight: 0.15 };
/** Answers and outcomes are many. */
const WEIGHT_OF_OTHERS = 0.02;
/** Outcomes of a remedy that are said of the talk as much. */
const BOTH: readonly string[] = ['not-yet', 'asks-back'];

const { lexicon } = loadTriage(KNOWLEDGE).reading.sayings;

interface TalkLine {
  readonly kind: string;
  readonly text: string;
}

const rowOf = ({ kind, text }: TalkLine, weight = 1): Row => ({
  marks: [...outcomeMarks(saidText(lexicon, text))],
  tells: TALK_KINDS.some((one) => one === kind) ? [kind] : [],
  weight,
});

const rows = linesIn<TalkLine>('scripts/reading/talk').map((line) => rowOf(line));
const met = new Map<string, number>();
for (const { marks } of rows) for (const mark of marks) met.set(mark, (met.get(mark) ?? 0) + 1);

const others: readonly string[] = [
  ...linesIn<{ readonly outcome: string; readonly text: string }>('scripts/reading/outcomes')
    .filter(({ outcome }) => !BOTH.includes(outcome))
    .map(({ text }) => text),
  ...readEntries(KNOWLEDGE).entries.wordedAnswers.flatMap(({ said }) => Object.values(said).flat()),
  ...linesIn<{ readonly text: string }>('scripts/reading/examples', 'sentences-').map(({ text }) => text),
];
const otherRows = others
  .map((text) => rowOf({ kind: 'nothing', text }, WEIGHT_OF_OTHERS))
  .map((row) => ({ ...row, marks: row.marks.filter((mark) => (met.get(mark) ?? 0) >= HOW.leastRows) }));

const weights = fitWeights([...rows, ...otherRows], HOW);
for (const level of [0.3, 0.4, 0.5, 0.6, 0.7]) {
  let [right, other, unheard, taken, all, misses] = [0, 0, 0, 0, 0, 0];
  for (const { kind, text } of linesIn<TalkLine>('test/reading/corpus/talk')) {
    const likely = likelyOutcomes(weights, saidText(lexicon, text));
    const [best] = [...likely].reduce((a, b) => (b[1] > a[1] ? b : a), [NOTHING, 0]);
    const heard = best === NOTHING || (likely.get(NOTHING) ?? 0) > level ? 'nothing' : best;
    if (kind === 'nothing') {
      misses += 1;
      taken += heard === 'nothing' ? 0 : 1;
      continue;
    }
    all += 1;
    if (heard === kind) right += 1;
    else if (heard === 'nothing') unheard += 1;
    else other += 1;
  }
  console.log(
    `from ${level}: right ${right}, of another kind ${other}, unheard ${unheard} of ${all}; near misses taken ${taken} of ${misses}`,
  );
}
const bytes = encodeWeights(weights);
console.log(`${rows.length} lines, ${otherRows.length} others, ${weights.marks.length} marks, ${bytes.length} bytes`);
if (process.argv.includes('--write')) writeFileSync(OUT, bytes);
