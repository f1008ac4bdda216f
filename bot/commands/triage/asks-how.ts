/** "How do i stop my phone going back to the house wifi": answered by the lines that say so, and the step in hand stands. */
import { answersItself, readText } from '../../reading/index.js';
import { assess, howTold, tellText, type FaultEntry, type System, type WalkState } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { COMPLAINT } from './told-at-card.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';
import { ownLines, type LinesText } from './walk-words.js';

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

interface Told {
  readonly text: LinesText;
  /** The record with the words, and the system as it stands then. */
  readonly state: WalkState;
  readonly system: System | null;
}

/** Whoever asks how to stop a thing has told the trouble before. */
const withoutComplaint = (state: WalkState): WalkState => {
  const last = state.events.at(-1);
  if (last?.kind !== 'text') return state;
  const facts = last.facts.filter(({ what }) => !COMPLAINT.has(what));
  return { ...state, events: [...state.events.slice(0, -1), { ...last, facts }] };
};

/** The remedy of the cause that the words name, and tell of. */
const ofCause = ({ context, walk }: Began, text: string, { remedy }: FaultEntry): Told => {
  const told = tellText(context.model, walk.state, text, context.by).state;
  const state = withoutComplaint(told);
  const { system } = assess(context.model, state, context.outcomes).context;
  return { text: remedy.steps, state, system };
};

/** The lines of any other look or remedy that say how; the words tell nothing. */
const ofGuides = ({ context, walk, before }: Began, text: string): Told | null => {
  const told = howTold(context.model, before, text.replace(ASKS_HOW, ' '));
  if (told === null || told.step === before.step.id) return null;
  const { system } = before.context;
  return { text: told.lines, state: keptWords(context.by, walk.state, text), system };
};

/** @returns null where the words ask no such thing, or ask it of the step in hand, which has its own answer */
export const takeHow = (began: Began, text: string): Turn | null => {
  const { before } = began;
  if (!isAsked(began) || text.length > LONGEST || !ASKS_HOW.test(text) || answersItself(text)) return null;
  const cause = causeNamed(began, text);
  if (cause?.id === before.step.id) return null;
  const told = cause === null ? ofGuides(began, text) : ofCause(began, text, cause);
  if (told === null) return null;
  const lines = ownLines(told.text, told.system, told.state).slice(0, MOST_LINES);
  if (lines.length === 0) return null;
  return changed(began, told.state, {
    notes: [`How: ${lines.join(' ')}`, 'Done, or seen? Tell me what came of it. The question before still stands.'],
    at: before.step,
    few: true,
    isTold: true,
  });
};
