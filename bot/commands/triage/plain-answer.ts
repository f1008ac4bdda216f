/** An answer to the step in hand by its id, its label or a word of its own: "no", "linux", "no numbers". */
import { tableOf } from '../../ground/table-of.js';
import { saysNone, saysUnsure } from '../../reading/index.js';
import { NUMBERS, UNSURE, type Assessment, type CheckEntry, type Step } from '../../triage/index.js';
import { answersOf } from './step-data.js';

const TRY_WORDS = tableOf({ fixed: 'works', no: 'same', changed: 'changed', 'could not': 'could-not' });
const NUMBER_WORDS = ['number', 'figure', 'coordinate', 'reading', 'value'];
const NO_NUMBERS =
  /^(?:(?:sorry|well|i|i have|ive|got|have),? )*(?:no|none|nope|not now|skip)(?: (?:numbers?|figures?|coordinates?|idea))?(?: (?:now|here|sorry|tonight|on me|at hand|yet))*[ .!]*$/iu;

const NONE =
  "(?:no|not|none|never|without|zero|nothing|can(?:not|['\u2019]?t)|do(?: not|n['\u2019]?t)|have(?: not|n['\u2019]?t)|havent|dont|idk|dunno)";
const FIGURES = '(?:numbers?|figures?|degrees?|coordinates?|values?|readings?|digits?)';
/** "I not know numbers", "no idea what degrees, just wrong", "nothing to read off": wherever a number is asked for, there is none. */
const HAS_NO_FIGURES = new RegExp(
  [
    `\\b${NONE}\\b[^.;!?]{0,30}\\b${FIGURES}\\b`,
    '\\b(?:nothing|not a thing|none) (?:here |there )?to (?:read|tell|type|give|show)\\b',
    `\\bwhat (?:${FIGURES})\\b[?!. ,]*(?:i )?(?:${NONE}|where)\\b`,
  ].join('|'),
  'iu',
);
/** A number said is one to be heard. */
const HAS_A_NUMBER =
  /\d|\b(?:one|two|three|four|five|ten|fifteen|half|dozen|fist|hand|finger|moon(?:s|['\u2019]s)?)\b/iu;
const LONGEST_OF_NO_FIGURES = 90;
const ASKS_FOR_FIGURES =
  /\b(?:how (?:far|much|many|strong)|what does .* read|read (?:against|while)|volts|amps|amount)\b/iu;

const saysHasNoFigures = (said: string): boolean =>
  said.length <= LONGEST_OF_NO_FIGURES &&
  HAS_NO_FIGURES.test(said) &&
  !HAS_A_NUMBER.test(said.replace(/\b(?:have|got|see|find) (?:one|any)\b/giu, ''));

/** "No numbers", where the numbers of a miss are asked for. */
const saysNoNumbers = (said: string): boolean =>
  NO_NUMBERS.test(said.trim()) || saysNone(NUMBER_WORDS, said) || saysHasNoFigures(said);

/** "Couldn't do it", "not possible": of a remedy that is its own answer, and not that nobody can tell. */
const COULD_NOT = /\b(?:can(?:not| not|['\u2019]?t)|could(?: not|n['\u2019]?t)|not possible|impossible|no way)\b/iu;
const CANNOT_TELL = /\b(?:tell|say|know|sure|certain|see)\b/iu;
const saysCouldNot = (said: string): boolean => COULD_NOT.test(said) && !CANNOT_TELL.test(said);

/** Words that say of a question that it cannot be answered. */
const saidOfLook = (check: CheckEntry, said: string): string | undefined => {
  if (ASKS_FOR_FIGURES.test(check.question) && saysHasNoFigures(said)) return UNSURE;
  return saysNone(check.noneIsUnsure ?? [], said) ? UNSURE : undefined;
};

/** Words that say of any step of its kind that it cannot be told. */
const saidOfKind = (step: Step, said: string): string | undefined => {
  const isUnsure = said.trim() === '?' || saysUnsure(said);
  if (step.kind === NUMBERS) return saysUnsure(said) || saysNoNumbers(said) ? UNSURE : undefined;
  if (step.kind === 'try' && isUnsure) return saysCouldNot(said) ? 'could-not' : UNSURE;
  if (step.kind !== 'ask') return undefined;
  if (isUnsure) return UNSURE;
  return step.opening ? undefined : saidOfLook(step.check, said);
};

/** "no", "linux" or a label, for the question in hand: its answer id; undefined when it is something else. */
export const plainAnswer = (assessment: Assessment, said: string): string | undefined => {
  const { step } = assessment;
  const wanted = said.trim().toLowerCase();
  const tried = step.kind === 'try' ? TRY_WORDS.get(wanted) : undefined;
  if (tried !== undefined) return tried;
  return (
    saidOfKind(step, said) ??
    answersOf(assessment).find(({ id, label }) => id === wanted || label.toLowerCase() === wanted)?.id
  );
};

/** `CHECK.ANSWER` as buttons send it, or an answer alone for the step in hand. */
export const splitAnswer = (assessment: Assessment, said: string): readonly [string, string] => {
  const [first = '', second] = said.trim().toLowerCase().split('.', 2);
  if (second !== undefined) return [first, second];
  return [assessment.step.id, plainAnswer(assessment, said) ?? said.trim().toLowerCase()];
};
