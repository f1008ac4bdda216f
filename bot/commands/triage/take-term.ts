/** A word of the trade asked for in a walk: explained in a line; with what the words tell of a setting they ask about. */
import { tellText } from '../../triage/index.js';
import { asksTheTime } from './said-of-the-talk.js';
import { explained, explainedBeside, explainedSummer } from './terms.js';
import { changed, type Began, type SaidInTurn, type Turn } from './turn.js';
import { hasBegun } from './walk-words.js';

const timeNow = (utcMs: number): string =>
  `By my clock it is ${new Date(utcMs).toISOString().slice(11, 16)} UTC. What a mount at your site should show stands in its right entries: entries.`;

export const takeTerm = (began: Began, text: string): Turn | null => {
  const { context, walk, notes, before } = began;
  if (!hasBegun(walk)) return null;
  if (asksTheTime(text)) return { walk, notes: [...notes, timeNow(context.nowUtcMs)], at: before.step, show: 'step' };
  const term = explained(text);
  if (term !== null) return { walk, notes: [...notes, term], at: before.step, show: 'step' };
  const summer = explainedSummer(text);
  const told = summer === null ? null : tellText(context.model, walk.state, text, context.by).state;
  return summer === null || told === null ? null : changed(began, told, { notes: [summer], at: before.step });
};

/** "What is sidereal? The clock is right": the term explained, and the rest to be heard. */
export const withoutTerm = (began: Began, said: SaidInTurn): readonly [Began, SaidInTurn] => {
  const beside = said.text !== undefined && hasBegun(began.walk) ? explainedBeside(said.text) : null;
  return beside === null
    ? [began, said]
    : [
        { ...began, notes: [...began.notes, beside.says] },
        { ...said, text: beside.rest },
      ];
};
