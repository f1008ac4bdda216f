/** A sheet for people who judge readings: each text with what was read of it in words, a box before each, and no labels. */
import type { Reading } from '../../bot/reading/index.js';
import { CLIENT_NAMES, SYSTEM_NAMES, type TriageModel } from '../../bot/triage/index.js';
import { tally, type Measured, type Tally } from './measure.js';

const HEAD = `For each text below: does it bear out each line under it? Judge by what the text plainly says or shows of the writer's own
mount and computer, as an experienced club member would. Put y (the text says or clearly implies it) or n (it does not) between the
brackets; leave them empty only where you cannot tell. Change nothing else.`;

/** "log-12" of texts, "check.answer" of readings. */
const LINE = /^\[([ynYN]?) ?\] (\S+) (\S+) \|/u;

const nameOf = (names: Readonly<Record<string, string>>, id: string): string => names[id] ?? id;

const inWords = (model: TriageModel, { what, answer }: Reading['facts'][number]): string => {
  if (what === 'system') return `The computer runs ${nameOf(SYSTEM_NAMES, answer)}`;
  if (what === 'client') return `The program: ${nameOf(CLIENT_NAMES, answer)}`;
  if (what === 'path') {
    const title = model.path(answer)?.title ?? model.reading.families.find(({ id }) => id === answer)?.label;
    return `The mount is reached by: ${title ?? answer}`;
  }
  const check = model.check(what);
  const label = check?.answers.find(({ id }) => id === answer)?.label;
  return `${check?.question ?? what} — ${label ?? answer}`;
};

export const sheetOf = (model: TriageModel, all: readonly Measured[]): string =>
  [
    HEAD,
    ...all
      .filter(({ reading }) => reading.facts.length > 0)
      .map(({ own, reading }) =>
        [
          `=== ${own.id}`,
          ...own.text.split(/\r?\n/u).map((line) => `> ${line}`),
          ...reading.facts.map((fact) => `[ ] ${own.id} ${fact.what}.${fact.answer} | ${inWords(model, fact)}`),
        ].join('\n'),
      ),
  ].join('\n\n');

/** Text id → reading → whether a person found it borne out; readings left open are not in it. */
export type Verdicts = ReadonlyMap<string, ReadonlyMap<string, boolean>>;

export const readSheet = (sheet: string): Verdicts => {
  const verdicts = new Map<string, Map<string, boolean>>();
  for (const line of sheet.split(/\r?\n/u)) {
    const [, mark, id, pair] = LINE.exec(line) ?? [];
    if (mark === undefined || mark === '' || id === undefined || pair === undefined) continue;
    const own = verdicts.get(id) ?? new Map<string, boolean>();
    own.set(pair, mark.toLowerCase() === 'y');
    verdicts.set(id, own);
  }
  return verdicts;
};

export interface Judged {
  /** Kind of text → what people found. */
  readonly sums: ReadonlyMap<string, Tally>;
  readonly wrong: readonly string[];
  /** Readings of judged texts that the sheet does not have, or left open. */
  readonly open: readonly string[];
}

/** What is read of the texts today, as the people's verdicts have it; texts that no one judged are left out. */
export const judge = (all: readonly Measured[], verdicts: Verdicts): Judged => {
  const sums = new Map<string, Tally>();
  const wrong: string[] = [];
  const open: string[] = [];
  for (const { own, reading } of all) {
    const verdict = verdicts.get(own.id);
    if (verdict === undefined) continue;
    for (const { what, answer, quote } of reading.facts) {
      const right = verdict.get(`${what}.${answer}`);
      const line = `${own.id} ${what}.${answer} of “${quote}”`;
      if (right === undefined) open.push(line);
      else {
        const sum = sums.get(own.kind) ?? tally();
        sum[right ? 'right' : 'wrong'] += 1;
        sums.set(own.kind, sum);
        if (!right) wrong.push(line);
      }
    }
  }
  return { sums, wrong, open };
};
