/** What a member says instead of an earlier answer: "i looked wrong before, it does blink" takes the place of "it stays dark". */
import { answerMeant, curedByDeed, holdsSeveral, outcomeSaid, takesBack, type Reading } from '../../reading/index.js';
import { wantsPlainWords, type TriageModel, type WalkEvent } from '../../triage/index.js';
import { saidBefore } from './said-before.js';
import { COMPLAINT, tellsAfterwards, tellsOutcome } from './told-at-card.js';
import type { Began } from './turn.js';

export interface Correction {
  readonly check: string;
  readonly answer: string;
  /** "Adapter light: It sends and receives". */
  readonly label: string;
}

/** Answers no further back than this are spoken of without being named. */
const LATELY = 3;

const labelled = (model: TriageModel, check: string, answer: string): Correction | null => {
  const entry = model.check(check);
  const label = entry?.answers.find(({ id }) => id === answer)?.label;
  return entry === undefined || label === undefined
    ? null
    : { check, answer, label: `${entry.brief ?? entry.question}: ${label}` };
};

/** The latest answer of which the words, read as an answer to that question, say another. */
const ofLately = (model: TriageModel, events: readonly WalkEvent[], text: string): Correction | null => {
  const own = events.flatMap((event) => (event.kind === 'answer' ? [event] : [])).slice(-LATELY);
  for (const { check, answer } of own.reverse()) {
    const entry = model.check(check);
    if (entry === undefined || holdsSeveral(check)) continue;
    const { answers, good } = entry;
    const meant = answerMeant(model.reading, text, { id: check, answers, good, guards: wantsPlainWords(entry) });
    if (meant?.isSure === true && meant.id !== answer) return labelled(model, check, meant.id);
    // What fits the answer given takes nothing of it back.
    if (meant?.isSure === true) return null;
  }
  return null;
};

/** What a look shows that is told beside a remedy, with no word that it was done: the one before it was seen amiss. */
const isLookAnew = ({ context, before: { step } }: Began, text: string): boolean =>
  step.kind === 'try' &&
  !tellsAfterwards(text) &&
  !curedByDeed(text).isDone &&
  !tellsOutcome(outcomeSaid(context.model.reading, text));

/** @returns what takes the place of earlier answers; none where nothing is taken back, or nothing of it was answered otherwise */
export const correctionsIn = (began: Began, text: string, read: Reading): readonly Correction[] => {
  const { context, walk } = began;
  if (read.by !== 'words' || !(takesBack(text) || isLookAnew(began, text))) return [];
  const { events } = walk.state;
  const before = saidBefore(events);
  const told = read.facts.flatMap(({ what, answer }) => {
    const earlier = before.get(what);
    if (earlier === undefined || earlier === answer || holdsSeveral(what)) return [];
    // The complaint as it is now is what came of the remedy.
    if (!takesBack(text) && (COMPLAINT.has(what) || context.model.check(what)?.good === answer)) return [];
    return labelled(context.model, what, answer) ?? [];
  });
  if (told.length > 0) return told;
  if (!takesBack(text)) return [];
  const latest = ofLately(context.model, events, text);
  return latest === null ? [] : [latest];
};
