/** "How do i stop my phone going back to the house wifi": answered by the lines that say so, and the step in hand stands. */
import { howTold } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';
import { filledFrom, forPhone, linesFor } from './walk-words.js';

const ASKS_HOW =
  /^\W*(?:(?:ok|okay|but|and|so|sorry|um|er|hm+|please|yes|no),? )*(?:(?:how|where) (?:do|can|could|should|would|must) (?:i|we|you|one)|how (?:to|does one)|(?:can|could) you (?:tell|show) me how (?:to|i(?: can)?)|i (?:do ?n['\u2019]?t|do not) know (?:how|where) (?:to|i)|what is the way to|tell me how to|what (?:do|can|could|should|shall|must) (?:i|we|one) do (?:about|against))\b/iu;
const LONGEST = 120;
const MOST_LINES = 4;

/** @returns null where the words ask no such thing, or ask it of the step in hand, which has its own answer */
export const takeHow = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  if (!isAsked(began) || text.length > LONGEST || !ASKS_HOW.test(text)) return null;
  const told = howTold(context.model, before, text.replace(ASKS_HOW, ' '));
  if (told === null || told.step === before.step.id) return null;
  const lines = linesFor(told.lines, before.context.system)
    .flatMap(forPhone(walk.state))
    .map(filledFrom(walk.state))
    .slice(0, MOST_LINES);
  if (lines.length === 0) return null;
  return changed(began, keptWords(context.by, walk.state, text), {
    notes: [`How: ${lines.join(' ')}`, 'Done, or seen? Tell me what came of it. The question before still stands.'],
    at: before.step,
    few: true,
  });
};
