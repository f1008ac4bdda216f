/** A made-up member whose mount has one fault of the shipped model: reads a step and answers as that fault would show itself. */
import type { TriageModel } from '../../bot/triage/index.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { bare } from './stage.js';

/** The fault, and the connection it is found in. */
export interface Trouble {
  readonly faultId: string;
  readonly path: string;
  readonly system: 'windows' | 'macos' | 'linux';
  readonly client: 'direct' | 'platform';
}

export interface Response {
  readonly kind: 'opening' | 'check' | 'try';
  readonly id: string;
  readonly label: string;
}

const OPENING = {
  path: 'How does the computer reach the mount?',
  system: 'Which computer is it?',
  client: 'How does your program talk to the mount?',
} as const;
const SYSTEM_LABELS = { windows: 'Windows', macos: 'macOS', linux: 'Linux' } as const;
const CLIENT_LABELS = { direct: 'It opens the port itself', platform: 'Through a driver platform' } as const;

/** What is asked comes before what is said about it, so the first question in the text is the one meant. */
const firstIn = <T>(text: string, all: readonly T[], wordsOf: (one: T) => string): T | undefined => {
  const read = bare(text);
  const found = all
    .map((one) => ({ one, at: read.indexOf(bare(wordsOf(one))), length: wordsOf(one).length }))
    .filter(({ at }) => at >= 0);
  return found.sort((a, b) => a.at - b.at || b.length - a.length)[0]?.one;
};

/** The answer to a step as it was shown, from the words alone. */
export const responseTo = (model: TriageModel, { faultId, path, system, client }: Trouble, text: string): Response => {
  const tried = firstIn(text, model.faults, ({ title }) => `Likely cause: ${title}.`);
  if (tried !== undefined)
    return { kind: 'try', id: tried.id, label: tried.id === faultId ? 'I see that, and it works now' : 'No change' };
  const opening = firstIn(text, ['path', 'system', 'client'] as const, (id) => OPENING[id]);
  if (opening === 'path') return { kind: 'opening', id: 'path', label: model.path(path)?.title ?? path };
  if (opening === 'system') return { kind: 'opening', id: 'system', label: SYSTEM_LABELS[system] };
  if (opening === 'client') return { kind: 'opening', id: 'client', label: CLIENT_LABELS[client] };

  const check = firstIn(text, model.checks, ({ question }) => question);
  if (check === undefined) throw new Error(`no step of a walk to be read in: ${text}`);
  const situation = situationFor(model, { path, system, client });
  const fault = situation.faultIndex.get(faultId);
  const numbers = situation.checks[situation.checkIndex.get(check.id) ?? -1];
  if (fault === undefined || numbers === undefined)
    throw new Error(`${faultId} or ${check.id} does not belong in this context`);
  const odds = numbers.odds.map((ofAnswer) => ofAnswer[fault] ?? 0);
  const likeliest = check.answers[odds.indexOf(Math.max(...odds))];
  return { kind: 'check', id: check.id, label: likeliest?.label ?? '' };
};
