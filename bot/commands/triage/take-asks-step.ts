/** "Where is this limit?", "what I must do now?": answered from the step in hand, and once more only with the ways on. */
import { asksOfTheStep, lineAsked, namesWhatItAsks, type AsksOfStep } from '../../reading/index.js';
import { takeHow } from './asks-how.js';
import { aboutRemedy } from './about-remedy.js';
import { keptWords } from './kept-words.js';
import { howLines, lettered, remedyLines } from './step-data.js';
import { changed, isAsked, type Began, type SaidInTurn, type Turn } from './turn.js';

const NO_MORE_AT_LOOK =
  'More than that I do not know of it. “Not sure” goes on; “a person please” hands it to a helper.';
const NO_MORE_AT_REMEDY =
  'More than these lines I do not know of it. “Could not do it” goes on another way; “a person please” hands it to a helper.';
const WHERE_TO_SEEK =
  'Where that stands differs: look in the program’s settings, then in those of the mount’s driver, then in the hand controller’s menus.';

/** Lines that name a place on the screen or at the mount. */
const NAMES_A_PLACE =
  /\b(?:menus?|settings?|options?|manager|tab|list|window|bar|panel|properties|preferences|label|sheet|socket|terminal|type|below|under|near|beside|screen|right entries)\b/iu;

/** The member asked the same of this step a moment ago, and was answered. */
const wasAsked = ({ walk: { state } }: Began): boolean => {
  const last = state.events.at(-1);
  return last?.kind === 'text' && asksOfTheStep(last.words) !== null;
};

/** Looks into a program's or the mount's settings. */
const OF_SETTINGS: ReadonlySet<string> = new Set([
  'bridge-entry',
  'port-match',
  'port-settings',
  'settings-screen',
  'mount-type',
  'patience',
  'epoch-entries',
  'program-clock',
  'bridge-speed',
  'motion-rate',
  'tracking-rate',
  'park-state',
]);

const WAY_BY_EYE =
  'Follow the cable from the computer: does it end at the hand controller or at a socket of the mount, or is there none (Wi-Fi, Bluetooth)? Pick what comes nearest.';

/** What stands with the question itself tells it for the others of the opening, and for numbers. */
const ofLook = (began: Began, asked: AsksOfStep): readonly string[] => {
  const { step } = began.before;
  if (step.kind === 'ask' && step.opening && step.id === 'path') return [WAY_BY_EYE];
  const lines = howLines(began.walk, began.before);
  return asked === 'where' && OF_SETTINGS.has(step.id) && !lines.some((line) => NAMES_A_PLACE.test(line))
    ? [...lines, WHERE_TO_SEEK]
    : lines;
};

const ofRemedy = (began: Began, asked: AsksOfStep, text: string): readonly string[] => {
  const { context, walk, before } = began;
  const lines = remedyLines(walk, before);
  if (asked === 'how') {
    const wanted = lines[lineAsked(text) ?? lines.length];
    return wanted === undefined ? lines.map(lettered) : [wanted];
  }
  const told = aboutRemedy(context.model, walk, before, text).filter((line) => NAMES_A_PLACE.test(line));
  return told.length > 0 ? told : [...lines.filter((line) => NAMES_A_PLACE.test(line)).slice(0, 2), WHERE_TO_SEEK];
};

/** @returns null where the words ask nothing of the step, or tell anything besides */
export const takeAsksOfStep = (began: Began, { text, answer }: SaidInTurn): Turn | null => {
  if (text === undefined || answer !== undefined || !isAsked(began)) return null;
  const asked = asksOfTheStep(text);
  if (asked === null) return null;
  const elsewhere = namesWhatItAsks(text) ? takeHow(began, text) : null;
  if (elsewhere !== null) return elsewhere;
  const { context, walk, before } = began;
  const { step } = before;
  const isRemedy = step.kind === 'try';
  const lines = isRemedy ? ofRemedy(began, asked, text) : ofLook(began, asked);
  const isSaidAgain = wasAsked(began);
  return changed(began, keptWords(context.by, walk.state, text), {
    notes: isSaidAgain ? [isRemedy ? NO_MORE_AT_REMEDY : NO_MORE_AT_LOOK] : lines,
    at: step,
    few: true,
    isTold: true,
  });
};
