/** From what a member said to what is to be run, and where its answer belongs. */
import { problem } from '../../../ground/problem.js';
import type { MemberFile } from '../../../ground/member-file.js';
import type { Outcome } from '../../../reply/reply.js';
import type { Content, MatrixEvent } from './matrix-event.js';
import { runOfWords, type NumberInWords } from './choices.js';
import { answerRelation, relationTo } from './matrix-event.js';
import type { FileReader } from './member-file.js';
import type { Offer, Offers } from './offers.js';
import type { Asked } from './read-message.js';

/** A command line, with the file it speaks of; words or a file for a walk that waits; or what is to be said of a pick that cannot be. */
export type Run =
  | { readonly line: string; readonly file: MemberFile | null }
  | { readonly words: string }
  | { readonly walkFile: MemberFile }
  | { readonly outcome: Outcome };

export interface Task {
  readonly run: Run;
  readonly relation: Content;
}

const noSuchChoice = (offer: Offer | null): Outcome =>
  problem(
    'no-such-choice',
    offer === null
      ? 'There is nothing to choose from just now. Ask a question, or type help.'
      : `Choose ${offer.runs.length === 1 ? '1' : `a number from 1 to ${offer.runs.length}`}, or ask another question.`,
  );

/** The one command that takes a file. */
const TAKES_FILE = /^\s*triage\b/iu;

const UNREADABLE = problem(
  'unreadable',
  'I cannot read the message you answered: it is from before I came, or its key is lost. Please ask anew.',
);

export interface Heard {
  readonly roomId: string;
  readonly event: MatrixEvent;
  readonly asked: Asked;
  readonly arrivedMs: number;
}

/** The file that a line may speak of: the message it replies to, where that is one. */
const runOfLine = async (
  offers: Offers,
  fileIn: FileReader,
  { roomId, event }: Heard,
  { line, repliedTo }: Extract<Asked, { kind: 'line' }>,
): Promise<Run> => {
  if (repliedTo === null || !TAKES_FILE.test(line)) return { line, file: null };
  const named = await offers.eventNamed(roomId, repliedTo, event.sender);
  return named === null ? { outcome: UNREADABLE } : { line, file: fileIn(named) };
};

/** Words and files to nobody by name belong to the walk whose thread they stand in, or to the bot in a direct room. */
const runOfTold = async (
  offers: Offers,
  fileIn: FileReader,
  { roomId, event }: Heard,
  asked: Extract<Asked, { kind: 'words' | 'file' }>,
): Promise<Run | null> => {
  const { threadRoot } = asked;
  const isMine =
    (asked.kind === 'file' && asked.addressed) ||
    (threadRoot !== null && (await offers.isWalkThread(roomId, threadRoot, event.sender)));
  if (!isMine) return null;
  if (asked.kind === 'words') return { words: asked.text };
  const walkFile = fileIn(event);
  return walkFile === null ? null : { walkFile };
};

type Told = Extract<Asked, { kind: 'line' | 'words' | 'file' }>;

const taskOfTold = async (
  offers: Offers,
  fileIn: FileReader,
  heard: Heard,
  asked: Told | null,
): Promise<Task | null> => {
  if (asked === null) return null;
  const picked = asked.kind === 'file' ? null : offers.byLabel(heard, asked.kind === 'line' ? asked.line : asked.text);
  if (picked !== null) return { run: { line: picked, file: null }, relation: answerRelation(heard.event) };
  const run =
    asked.kind === 'line'
      ? await runOfLine(offers, fileIn, heard, asked)
      : await runOfTold(offers, fileIn, heard, asked);
  return run === null ? null : { run, relation: answerRelation(heard.event) };
};

/** "The second" that picks nothing is a line to the bot, or words in a thread. */
const asWords = (
  { addressed, repliedTo, threadRoot }: Extract<Asked, { kind: 'number' }>,
  text: string,
): Told | null => {
  if (addressed) return { kind: 'line', line: text, repliedTo };
  return threadRoot === null ? null : { kind: 'words', text, threadRoot };
};

const pickedRun = (run: string | undefined, words: NumberInWords | null): string | null => {
  if (run === undefined) return null;
  return words === null ? run : runOfWords(run, words);
};

/** What a number or a reaction picks of what was offered. */
const taskOfPick = async (
  offers: Offers,
  fileIn: FileReader,
  heard: Heard,
  asked: Extract<Asked, { kind: 'number' | 'reaction' }>,
): Promise<Task | null> => {
  const { roomId, event, arrivedMs } = heard;
  const relation = answerRelation(event);
  const found = await offers.find({ roomId, event, asked, arrivedMs });
  if (found === 'unreadable')
    return asked.kind === 'number' && asked.addressed ? { run: { outcome: UNREADABLE }, relation } : null;
  const line = pickedRun(found?.runs[asked.number - 1], asked.kind === 'number' ? asked.words : null);
  if (found !== null && line !== null) {
    // Nothing can be a reply to a reaction; the answer follows the offer instead.
    return {
      run: { line, file: null },
      relation: asked.kind === 'reaction' ? relationTo(found.eventId, found.threadRoot) : relation,
    };
  }
  if (asked.kind === 'number' && asked.words !== null)
    return taskOfTold(offers, fileIn, heard, asWords(asked, asked.words.text));
  const isMeant = asked.kind === 'number' && (asked.addressed || (found !== null && asked.repliedTo !== null));
  return isMeant ? { run: { outcome: noSuchChoice(found) }, relation } : null;
};

/** Null where nothing was meant for the bot. */
export const findTask = async (offers: Offers, fileIn: FileReader, heard: Heard): Promise<Task | null> => {
  const { asked } = heard;
  return asked.kind === 'number' || asked.kind === 'reaction'
    ? taskOfPick(offers, fileIn, heard, asked)
    : taskOfTold(offers, fileIn, heard, asked);
};
