/** Sentences that call a reminder off: all, one by its place in the list or its id, or one that speaks of a target. */
import { commandLine } from '../question-parts.js';
import type { Reading, Rule } from './asked.js';

const CALLS_OFF = '(?:get rid of|cancel|stop|delete|del|clear|drop|remove|forget|scrap|undo)';
const CANCEL_REMINDER = new RegExp(
  `\\b${CALLS_OFF}\\b(.*)\\b(?:reminders?|reminding|alerts?)\\b ?(?:no\\.? ?|number |#)?([\\da-z]*)`,
  'u',
);

/** "cancel the charge battery one": whether there is one about it, the command says. */
const CANCEL_ONE = new RegExp(
  `^(?:please )?${CALLS_OFF} (?:the |my |that )?(.{2,40}?) (?:one|reminder|alarm|alert|warning)$`,
  'u',
);

/** "the first one", "the 2nd one", "the last one": by its place in the list. */
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth'];
const CANCEL_NTH = new RegExp(
  `^(?:please )?${CALLS_OFF} (?:the |my |that )?(${ORDINALS.join('|')}|last|\\d{1,2}(?:st|nd|rd|th)) (?:one|reminder|alarm)$|^(?:please )?cancel (?:the )?(?:(last|first|second|third)|(?:number |no\\.? ?|#)?(\\d{1,2}))$`,
  'u',
);

const placeInList = (word: string): string =>
  ORDINALS.includes(word) ? String(ORDINALS.indexOf(word) + 1) : word.replace(/\D+$/u, '') || word;

/** "cancel that", "actually scrap it": the only reminder there is, else the command asks which. */
const CANCEL_IT =
  /^(?:please |no |ok |actually |oh )*(?:cancel|scrap|undo|forget|delete|remove) (?:it|that|this|that one|this one)(?: again| please)?$/u;

/** "Cancel all"; to delete or forget all is more than reminders. */
const CANCEL_ALL =
  /^(?:please |no |ok )*(?:cancel|stop|scrap) (?:them all|all(?: of (?:them|it))?|every ?(?:thing|one))(?: please| now)?$/u;

/** Of reminders, or of all that is kept: the list offers each, and all. */
const DELETE_ALL =
  /^(?:please |no |ok )*(?:get rid of|delete|del|remove|clear|drop|cancel|scrap) (?:them all|both(?: of them)?|the lot|all of (?:them|those)|all (?:those|these)|those|these|them)(?: please| now)?$/u;

const cancelPointedAt = (plain: string): Reading | null => {
  const [, one, bare, number] = CANCEL_NTH.exec(plain) ?? [];
  const nth = one ?? bare ?? number;
  if (nth !== undefined) return { line: commandLine('remind', 'cancel', { id: placeInList(nth) }) };
  if (CANCEL_ALL.test(plain)) return { line: commandLine('remind', 'cancel', { id: 'all' }) };
  if (DELETE_ALL.test(plain)) return { line: 'remind list', note: 'To call them all off: remind cancel all' };
  return CANCEL_IT.test(plain) ? { line: 'remind cancel' } : null;
};

/** Which of the reminders: all, one by its place in the list or its id, or one that speaks of a target. */
export const cancelReminder: Rule = ({ plain, targets }) => {
  const pointed = cancelPointedAt(plain);
  if (pointed !== null) return pointed;
  const one = CANCEL_ONE.exec(plain)?.[1];
  if (one !== undefined && !/^(?:all|every|last|next|first|the|my|that|this|\d+)\b/u.test(one) && targets.length === 0)
    return { line: commandLine('remind', 'cancel', { id: one }) };
  const found = CANCEL_REMINDER.exec(plain);
  if (found === null) return null;
  const [, words = '', after = ''] = found;
  const about = targets[0] ?? (/\b(?:all|every)\b/u.test(words) ? 'all' : undefined);
  const id = /\d/u.test(after) ? after : about;
  // "cancel my reminders": the list offers each.
  const isOne = /\breminder\b/u.test(plain);
  return { line: id === undefined && !isOne ? 'remind list' : commandLine('remind', 'cancel', { id }) };
};
