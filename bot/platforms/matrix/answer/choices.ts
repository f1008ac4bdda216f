/** Choices on Matrix: a numbered list whose commands travel inside the message itself, so that picking needs no memory. */
import type { Choice } from '../../../ground/problem.js';
import {
  numberLed,
  numberSaid,
  runOfLed,
  runOfPick,
  type NumberLed,
  type NumberSaid,
} from '../../shared/number-said.js';
import type { Content, MatrixEvent } from './matrix-event.js';
import { recordAt, textAt } from './matrix-event.js';

/** Our own key in a message's content. */
export const CHOICES_KEY = 'pierhand.choices';
const MOST_CHOICES = 25;
/**
 * Up to this many choices get number reactions from the bot, to be tapped; more are picked by typing (or by a member's own
 * reaction). Each is an event, and servers limit those: a common default lets ten through at once, then one in five seconds.
 */
export const MOST_REACTIONS = 5;

export interface OfferedChoices {
  /** Who asked. */
  readonly askerId: string;
  /** A command line each. */
  readonly runs: readonly string[];
}

export const choicesContent = (choices: readonly Choice[] | undefined, askerId: string): Content =>
  choices === undefined || choices.length === 0
    ? {}
    : { [CHOICES_KEY]: { asker: askerId, run: choices.slice(0, MOST_CHOICES).map(({ run }) => run) } };

/** What a message offers; null unless the bot itself wrote it, for anyone can write such a key. */
export const offeredIn = (event: MatrixEvent, botId: string): OfferedChoices | null => {
  if (event.sender !== botId || event.type !== 'm.room.message') return null;
  const field = recordAt(event.content, CHOICES_KEY);
  const runs = field['run'];
  const askerId = textAt(field, 'asker');
  if (askerId === null || !Array.isArray(runs) || !runs.every((run) => typeof run === 'string')) return null;
  return { askerId, runs };
};

/** "2", "2.", "#2" or "2)" → 2. */
export const numberIn = (text: string): number | null => {
  const digits = /^\s*#?(\d{1,2})[.)]?\s*$/u.exec(text)?.[1];
  return digits === undefined ? null : Number(digits);
};

export interface NumberInWords {
  readonly text: string;
  readonly number: number;
  readonly said: NumberSaid | NumberLed;
}

/** "2 maybe", "the second", "2. it says …"; of several numbers which is meant is not to be told. */
export const numberInWords = (text: string): NumberInWords | null => {
  const said = numberSaid(text);
  const [number, second] = said?.numbers ?? [];
  if (said !== null && number !== undefined && second === undefined) return { text, number, said };
  const led = said === null ? numberLed(text) : null;
  return led === null ? null : { text, number: led.number, said: led };
};

/** The line that the pick runs; null where its words do not go with what was offered. */
export const runOfWords = (run: string, { text, said }: NumberInWords): string | null =>
  'rest' in said ? runOfLed(run, said) : runOfPick(run, text, said);

/** 3 → "3️⃣"; 10 → "🔟". Unicode 17, emoji-sequences: digit, variation selector, combining enclosing keycap. */
export const keycap = (number: number): string => (number === 10 ? '🔟' : `${number}\uFE0F\u20E3`);

/** A reaction's number, with or without the variation selector that clients add or leave out. */
export const numberOfKeycap = (key: string): number | null => {
  if (key.replace('\uFE0F', '') === '🔟') return 10;
  const digit = /^([1-9])\uFE0F?\u20E3\uFE0F?$/u.exec(key)?.[1];
  return digit === undefined ? null : Number(digit);
};
