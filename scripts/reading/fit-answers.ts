/**
 * Fits the weights of `bot/reading/answers/guess-answer.ts`: `npx tsx scripts/reading/fit-answers.ts [--write]`. Every phrase of
 * knowledge/connection/reading/answers is taken out once and guessed from the rest; phrases of other questions and idle words
 * (no-answers.json) are what must not be taken for an answer. Prints how right the guesses are on questions that were not fitted on.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { measureAnswers, measureNearest, type Measured } from '../../bot/reading/answers/guess-answer.js';
import { linear, type Linear } from '../../bot/reading/answers/linear.js';
import type { AnswerMeant } from '../../bot/reading/answers/question-in-hand.js';
import { weighWords } from '../../bot/reading/answers/weigh-words.js';
import { countPhrases } from '../../bot/reading/answers/speaks-of.js';
import type { Vocabulary } from '../../bot/reading/index.js';
import { loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';

const KNOWLEDGE = 'knowledge/connection';
const OUT = 'bot/reading/answers/guess-weights.ts';
/** Questions are parted into so many; each part is guessed by what was fitted to the others. */
const PARTS = 8;
/** A phrase of another question, as against one of its own. */
const WEIGHT_OF_OTHERS = 0.3;
const WEIGHT_OF_IDLE = 0.5;
const PENALTY = 1;

interface Example {
  readonly part: number;
  readonly measured: Measured;
  readonly meant: AnswerMeant | null;
  readonly ratio: number | null;
  readonly ids: readonly string[];
  /** Which of the answers; -1: none. */
  readonly right: number;
  readonly weight: number;
}

const model = loadTriage(KNOWLEDGE);
const vocabulary = model.reading;
const { wordedAnswers } = readEntries(KNOWLEDGE).entries;

const without = (check: string, answer: string, at: number): Vocabulary => {
  const wordedAnswers: Vocabulary['wordedAnswers'] = (c, a) => {
    const all = vocabulary.wordedAnswers(c, a);
    return c === check && a === answer ? all.filter((_, i) => i !== at) : all;
  };
  const phrases = (model.check(check)?.answers ?? []).flatMap(({ id }) => wordedAnswers(check, id));
  const counts = vocabulary.phraseCounts();
  const ofCheck = new Map(counts.ofCheck).set(check, countPhrases([{ id: check, phrases }]).all);
  return { ...vocabulary, wordedAnswers, phraseCounts: () => ({ ...counts, ofCheck }) };
};

const exampleOf = (
  own: Vocabulary,
  check: string,
  text: string,
  { right, part, weight }: { right: string | null; part: number; weight: number },
): Example | null => {
  const entry = model.check(check);
  if (entry === undefined) return null;
  const answers = entry.answers.map(({ id, label }) => ({ id, label }));
  const weighed = weighWords(own, text, { id: check, answers, good: entry.good, guards: entry.safety });
  // What is said plainly is not guessed at.
  if (weighed === null || (weighed.isPlain && weighed.meant?.isSure === true)) return null;
  const measured = measureAnswers(weighed);
  const ids = answers.map(({ id }) => id);
  return {
    part,
    measured,
    meant: weighed.meant,
    ratio: weighed.ratio,
    ids,
    right: right === null ? -1 : ids.indexOf(right),
    weight,
  };
};

const collect = (): readonly Example[] => {
  const all: (Example | null)[] = [];
  const idle = JSON.parse(readFileSync('scripts/reading/no-answers.json', 'utf8')) as readonly string[];
  const phrases = wordedAnswers.flatMap(({ id, said }) =>
    Object.entries(said).flatMap(([answer, list]) => list.map((text, at) => ({ check: id, answer, text, at }))),
  );
  const holders = new Map<string, Set<string>>();
  for (const { check, text } of phrases) holders.set(text, (holders.get(text) ?? new Set()).add(check));
  const checks = wordedAnswers.map(({ id }) => id);
  const partOf = (check: string): number => checks.indexOf(check) % PARTS;
  for (const [i, { check, answer, text, at }] of phrases.entries()) {
    all.push(exampleOf(without(check, answer, at), check, text, { right: answer, part: partOf(check), weight: 1 }));
    const other = checks[(checks.indexOf(check) + 1 + ((i * 37) % (checks.length - 1))) % checks.length] ?? check;
    if (holders.get(text)?.has(other) !== true && /\s/u.test(text))
      all.push(exampleOf(vocabulary, other, text, { right: null, part: partOf(other), weight: WEIGHT_OF_OTHERS }));
  }
  for (const [i, text] of idle.entries())
    for (let k = 0; k < 6; k++) {
      const check = checks[(i * 11 + k * 23) % checks.length] ?? '';
      all.push(exampleOf(vocabulary, check, text, { right: null, part: partOf(check), weight: WEIGHT_OF_IDLE }));
    }
  return all.filter((one) => one !== null);
};

const scaleOf = (rows: readonly (readonly number[])[]): { mean: number[]; deviation: number[] } => {
  const width = rows[0]?.length ?? 0;
  const columns = Array.from({ length: width }, (_, k) => rows.map((row) => row[k] ?? 0));
  const mean = columns.map((column) => column.reduce((sum, x) => sum + x, 0) / column.length);
  const deviation = columns.map((column, k) =>
    Math.max(1e-3, Math.sqrt(column.reduce((sum, x) => sum + (x - (mean[k] ?? 0)) ** 2, 0) / column.length)),
  );
  return { mean, deviation };
};

/** Climbs a concave likelihood; `slope` gives its gradient at the weights. */
const climb = (
  width: number,
  steps: number,
  rate: number,
  slope: (weights: readonly number[]) => number[],
): number[] => {
  const weights = new Array<number>(width).fill(0);
  const pace = new Array<number>(width).fill(0);
  for (let step = 0; step < steps; step++) {
    const gradient = slope(weights);
    for (let k = 0; k < width; k++) {
      pace[k] = 0.9 * (pace[k] ?? 0) + (gradient[k] ?? 0);
      weights[k] = (weights[k] ?? 0) + rate * (pace[k] ?? 0);
    }
  }
  return weights;
};

const shares = (scores: readonly number[]): number[] => {
  const most = Math.max(...scores);
  const all = scores.map((score) => Math.exp(score - most));
  const sum = all.reduce((total, one) => total + one, 0);
  return all.map((one) => one / sum);
};

const scaled = (
  values: readonly number[],
  { mean, deviation }: { mean: readonly number[]; deviation: readonly number[] },
) => values.map((value, k) => (value - (mean[k] ?? 0)) / (deviation[k] ?? 1));

const fitWhich = (examples: readonly Example[]): Linear => {
  const own = examples.filter(({ right }) => right >= 0);
  const scale = scaleOf(own.flatMap(({ measured }) => measured.measures));
  const rows = own.map(({ measured, right }) => ({ all: measured.measures.map((one) => scaled(one, scale)), right }));
  const width = scale.mean.length;
  const weights = climb(width, 250, 0.15, (now) => {
    const gradient = now.map((weight) => (-PENALTY * weight) / rows.length);
    for (const { all, right } of rows) {
      const odds = shares(all.map((one) => one.reduce((sum, x, k) => sum + x * (now[k] ?? 0), 0)));
      for (const [a, one] of all.entries())
        for (let k = 0; k < width; k++)
          gradient[k] = (gradient[k] ?? 0) + (((a === right ? 1 : 0) - (odds[a] ?? 0)) * (one[k] ?? 0)) / rows.length;
    }
    return gradient;
  });
  return { ...scale, weights, bias: 0 };
};

const nearestOf = (which: Linear, example: Example) => {
  const scores = example.measured.measures.map((own) => linear(which, own));
  return measureNearest(example.measured, scores, example);
};

const fitWhether = (examples: readonly Example[], which: Linear): Linear => {
  const nearest = examples.map((example) => ({ ...nearestOf(which, example), example }));
  const scale = scaleOf(nearest.map(({ values }) => values));
  const rows = nearest.map(({ values, best, example }) => ({
    x: [...scaled(values, scale), 1],
    y: best === example.right ? 1 : 0,
    weight: example.weight,
  }));
  const width = scale.mean.length + 1;
  const weights = climb(width, 400, 0.2, (now) => {
    const gradient = now.map((weight, k) => (k === width - 1 ? 0 : (-PENALTY * weight) / rows.length));
    for (const { x, y, weight } of rows) {
      const chance = 1 / (1 + Math.exp(-x.reduce((sum, value, k) => sum + value * (now[k] ?? 0), 0)));
      for (let k = 0; k < width; k++)
        gradient[k] = (gradient[k] ?? 0) + (weight * (y - chance) * (x[k] ?? 0)) / rows.length;
    }
    return gradient;
  });
  return { ...scale, weights: weights.slice(0, -1), bias: weights.at(-1) ?? 0 };
};

const examples = collect();
const chanceOf = (which: Linear, whether: Linear, example: Example): { best: number; chance: number } => {
  const { best, values } = nearestOf(which, example);
  return { best, chance: 1 / (1 + Math.exp(-linear(whether, values))) };
};

const percent = (part: number, all: number): string => `${((100 * part) / Math.max(1, all)).toFixed(1)} %`;

const howWeighed = ({ meant }: Example): 'none' | 'sure' | 'unsure' => {
  if (meant === null) return 'none';
  return meant.isSure ? 'sure' : 'unsure';
};

const judged: { example: Example; best: number; chance: number }[] = [];
for (let part = 0; part < PARTS; part++) {
  const others = examples.filter((example) => example.part !== part);
  const which = fitWhich(others);
  const whether = fitWhether(others, which);
  for (const example of examples.filter((one) => one.part === part))
    judged.push({ example, ...chanceOf(which, whether, example) });
}
const own = judged.filter(({ example }) => example.right >= 0);
const foreign = judged.filter(({ example }) => example.right < 0);
const isRight = ({ example, best }: (typeof judged)[number]): boolean => best === example.right;
const meantRight = ({ example: { meant, ids, right } }: (typeof judged)[number]): boolean => meant?.id === ids[right];
console.log(`nearest is right: ${percent(own.filter(isRight).length, own.length)} of ${own.length} phrases`);
for (const [name, of] of [
  ['sure', own.filter(({ example }) => example.meant?.isSure === true)],
  ['unsure', own.filter(({ example }) => example.meant?.isSure === false)],
  ['none', own.filter(({ example }) => example.meant === null)],
] as const) {
  console.log(
    `weighed as ${name}: ${of.length}, weighed right ${percent(of.filter(meantRight).length, of.length)}, nearest right ${percent(of.filter(isRight).length, of.length)}`,
  );
  for (const least of [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]) {
    const taken = of.filter(({ chance }) => chance >= least);
    const same = of.filter(({ chance, best, example }) => chance >= least && example.meant?.id === example.ids[best]);
    const wrongly = foreign.filter(({ chance, example }) => chance >= least && howWeighed(example) === name);
    console.log(
      `  chance ${least}: guessed ${percent(taken.length, of.length)}, right ${percent(taken.filter(isRight).length, taken.length)}; same as weighed ${same.length}, right ${percent(same.filter(isRight).length, same.length)}; no answers taken ${wrongly.length} of ${foreign.length}`,
    );
  }
}
const rounded = ({ mean, deviation, weights, bias }: Linear): Linear => {
  const round = (x: number): number => Math.round(x * 1e4) / 1e4;
  return { mean: mean.map(round), deviation: deviation.map(round), weights: weights.map(round), bias: round(bias) };
};
const which = rounded(fitWhich(examples));
const whether = rounded(fitWhether(examples, which));
console.log(which.weights.join(' '), '|', whether.weights.join(' '), whether.bias);
if (process.argv.includes('--write')) {
  const text = (one: Linear): string =>
    JSON.stringify(one)
      .replace(/"(\w+)":/gu, '$1: ')
      .replaceAll(',', ', ');
  writeFileSync(
    OUT,
    `/** Made by \`npx tsx scripts/reading/fit-answers.ts --write\` from the phrases of knowledge/connection/reading/answers. */
import type { Linear } from './linear.js';

/** Which answer is nearest, and whether the nearest is meant. */
export const GUESS_WEIGHTS: { readonly which: Linear; readonly whether: Linear } = {
  which: ${text(which)},
  whether: ${text(whether)},
};
`,
  );
}
