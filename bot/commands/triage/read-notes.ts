/** "I take it: …": what was read from a member's words or paste, with one press to take each thing back. */
import { tidy } from '../../ground/tidy.js';
import type { Choice } from '../../ground/problem.js';
import type { Reading } from '../../reading/index.js';
import type { TriageModel } from '../../triage/index.js';
import { answerLine } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const MOST_TAKEN = 6;
const MOST_TO_TAKE_BACK = 4;
const MOST_MEANINGS = 3;

const labelOf = (model: TriageModel, what: string, answer: string): string | null => {
  if (what === 'path') return model.path(answer)?.title ?? null;
  return model.check(what)?.answers.find(({ id }) => id === answer)?.label ?? null;
};

export interface ReadWords {
  readonly notes: readonly string[];
  readonly choices: readonly Choice[];
}

/** What a reply says of a text just read, before the next step. */
export const readWords = (model: TriageModel, walk: Walk, read: Reading): ReadWords => {
  const taken = read.understood
    .map(({ fact, label }) => ({
      what: fact.what,
      label: tidy(label || (labelOf(model, fact.what, fact.answer) ?? ''), 60),
    }))
    .filter(({ label }, i, all) => label !== '' && all.findIndex((other) => other.label === label) === i)
    .slice(0, MOST_TAKEN);
  const meanings =
    read.by === 'words' ? [] : read.says.slice(0, MOST_MEANINGS).map((says) => `That message means: ${says}`);
  if (taken.length === 0)
    return {
      notes:
        meanings.length > 0
          ? meanings
          : ['I keep your words for whoever helps; I could not read a sure sign from them, so I ask.'],
      choices: [],
    };
  const same = new Set(taken.map(({ label }) => label.toLowerCase()));
  return {
    notes: [
      ...(read.by === 'picture' ? ['Read from the picture; letters may have slips.'] : []),
      `I take it: ${taken.map(({ label }) => (label.charAt(0).toLowerCase() === label.charAt(0) || /^[A-Z]{2}|^(?:Windows|Linux|Bluetooth|USB)/u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1))).join('; ')}.`,
      ...meanings.filter((line) => ![...same].some((label) => line.toLowerCase().includes(label))),
    ],
    choices: [
      ...taken
        .slice(0, MOST_TO_TAKE_BACK)
        .map(({ what, label }) => ({ label: `Not so: ${label}`, run: answerLine(walk, 'not', what) })),
      { label: 'Read rightly', run: answerLine(walk, 'read', 'right') },
    ],
  };
};
