/**
 * Fits the weights of `bot/reading/examples`: `npx tsx scripts/reading/fit-examples.ts [--write] [--held FILE …]`. The examples are
 * members' sentences and messages in examples/*.jsonl, written by people who knew neither the reader nor its vocabulary, each with what
 * it tells; see examples/README.md. Prints how far files named by --held, which are then not fitted on, are found and how rightly.
 * Takes a minute or three.
 */
import { writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { makeWeighing } from '../../bot/reading/examples/likely.js';
import { encodeWeights, type Weights } from '../../bot/reading/examples/weights.js';
import { sentencesOf } from '../../bot/reading/words/sentences.js';
import {
  exampleFiles,
  examplesIn,
  HOW,
  KNOWLEDGE,
  keyOfAnswer,
  lexicon,
  phraseExamples,
  rowsOf,
} from './example-rows.js';
import type { Example } from './examples.js';
import { fitAlone } from './fit-weights.js';

const OUT = `${KNOWLEDGE}/reading/examples.bin`;

const LEVELS = [0.3, 0.5, 0.6, 0.7, 0.8, 0.9] as const;

const measure = (weights: Weights, examples: readonly Example[]): void => {
  const weighClauses = makeWeighing(weights);
  const met = examples.flatMap(({ text, facts }) => {
    const labels = new Set(facts.map(({ label }) => label));
    return weighClauses(sentencesOf(lexicon, text))
      .likeliest(LEVELS[0])
      .map(({ check, answer, probability }) => ({
        probability,
        isRight: labels.has(`${check}.${answer}`),
      }));
  });
  const said = examples.reduce((sum, { facts }) => sum + new Set(facts.map(({ label }) => label)).size, 0);
  for (const level of LEVELS) {
    const taken = met.filter(({ probability }) => probability >= level);
    const right = taken.filter(({ isRight }) => isRight).length;
    const percent = (part: number, whole: number): string => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;
    console.log(`from ${level}: found ${percent(right, said)} of ${said}, right ${percent(right, taken.length)}`);
  }
};

const heldAt = process.argv.indexOf('--held');
const held = heldAt < 0 ? [] : process.argv.slice(heldAt + 1).map((name) => basename(name));
const fittedOn = exampleFiles.filter((name) => !held.includes(name));
const examples = [...fittedOn.flatMap((name) => examplesIn(name)), ...phraseExamples()];
const weights = fitAlone(examples.flatMap(rowsOf), HOW, keyOfAnswer);
console.log(`${examples.length} examples, ${weights.marks.length} marks, ${weights.steps.length} weights`);
if (held.length > 0)
  measure(
    weights,
    held.flatMap((name) => examplesIn(name)),
  );
if (process.argv.includes('--write')) {
  const bytes = encodeWeights(weights);
  writeFileSync(OUT, bytes);
  console.log(`${OUT}: ${(bytes.length / 1e6).toFixed(2)} MB`);
}
