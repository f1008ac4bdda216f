/** "How do i stop my phone going back to the house wifi": answered by the lines that say so, and the step in hand stands. */
import { answersItself, readText } from '../../reading/index.js';
import { assess, howTold, tellText, type FaultEntry } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';
import { filledFrom, forPhone, linesFor } from './walk-words.js';

const ASKS_HOW =
  /^\W*(?:(?:ok|okay|but|and|so|sorry|um|er|hm+|please|yes|no),? )*(?:(?:how|where) (?:do|can|could|should|would|must) (?:i|we|you|one)|how (?:to|does one)|(?:can|could) you (?:tell|show) me how (?:to|i(?: can)?)|i (?:do ?n['\u2019]?t|do not) know (?:how|where) (?:to|i)|what is the way to|tell me how to|what (?:do|can|could|should|shall|must) (?:i|we|one) do (?:about|against))\b/iu;
const LONGEST = 120;
const MOST_LINES = 4;

/** Told so surely, an answer is this cause's own. */
const ITS_OWN = 0.5;

const oddsOf = ({ answers }: FaultEntry, check: string, answer: string): number => {
  const odds = answers?.[check];
  if (odds === undefined) return 0;
  return typeof odds === 'string' ? Number(odds === answer) : (odds[answer] ?? 0);
};

/** "How do I stop it hopping to the house network": the words name the cause itself, and its remedy is the answer. */
const causeNamed = ({ context: { model }, before: { situation, belief } }: Began, text: string): FaultEntry | null => {
  const { facts } = readText(model.reading, text);
  const [first] = situation.faults
    .flatMap((fault, f) => {
      const { check, answer } = fault.verify;
      const told = facts.find(({ what }) => what === check);
      if (told === undefined || told.answer === answer || fault.remedy.cautions !== undefined) return [];
      const odds = oddsOf(fault, told.what, told.answer);
      return odds < ITS_OWN ? [] : [{ fault, likely: odds * (belief.probabilities[f] ?? 0) }];
    })
    .sort((one, other) => other.likely - one.likely);
  return first?.fault ?? null;
};

/** @returns null where the words ask no such thing, or ask it of the step in hand, which has its own answer */
export const takeHow = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  if (!isAsked(began) || text.length > LONGEST || !ASKS_HOW.test(text) || answersItself(text)) return null;
  const cause = causeNamed(began, text);
  const told =
    cause === null
      ? howTold(context.model, before, text.replace(ASKS_HOW, ' '))
      : { step: cause.id, lines: cause.remedy.steps };
  if (told === null || told.step === before.step.id) return null;
  const heard =
    cause === null
      ? keptWords(context.by, walk.state, text)
      : tellText(context.model, walk.state, text, context.by).state;
  const { system } = cause === null ? before.context : assess(context.model, heard, context.outcomes).context;
  const lines = linesFor(told.lines, system).flatMap(forPhone(heard)).map(filledFrom(heard)).slice(0, MOST_LINES);
  if (lines.length === 0) return null;
  return changed(began, heard, {
    notes: [`How: ${lines.join(' ')}`, 'Done, or seen? Tell me what came of it. The question before still stands.'],
    at: before.step,
    few: true,
  });
};
