/** What narrows a request: a least height, a faintest magnitude, a constellation. */
import { constellationMeant, constellationName } from '../../../catalogue/index.js';
import { runsOf, take, takeFirst, wordBefore, type Run, type Sentence } from './words.js';

const LONGEST = 5;

/** "above 60", "higher than 40 degrees", "at least 30°"; a bare number is degrees only after words of height. */
const ABOVE =
  /^(?:(?:altitude )?(?:above|over|higher than)|(?:with )?(?:an )?altitude (?:of )?(?:above|over|at least)) (\d{1,2})(?: ?°| ?deg| degrees?)?(?: (?:high|up|altitude))?$/u;
const AT_LEAST =
  /^(?:at least|clears?|reach(?:es)?|gets? (?:to|over)|pass(?:es)?|min(?:imum)?(?: of)?|more than|>=?) (\d{1,2}) ?(?:°|deg|degrees?)(?: (?:high|up|altitude))?$/u;
/** The number is of something else. */
const OTHER_UNIT =
  /^(?:am|pm|mm|cm|inch(?:es)?|in|"|″|arc\w*|mag\w*|minutes?|mins?|hours?|hrs?|seconds?|secs?|people|targets?|objects?|stars?|mph|percent|%|o'?clock)$/u;

const aboveIn = (sentence: Sentence, run: Run): string | null => {
  const found = ABOVE.exec(run.plain) ?? AT_LEAST.exec(run.plain);
  const next = sentence.words[run.at + run.count]?.plain ?? '';
  return found === null || OTHER_UNIT.test(next) ? null : (found[1] ?? null);
};

export const takeAbove = (sentence: Sentence): string | null =>
  takeFirst(sentence, LONGEST, (run) => aboveIn(sentence, run), /^(?:is|while|and|only)$/u)?.text ?? null;

const MAG = 'mag(?:nitudes?)?';
const BRIGHTER: readonly RegExp[] = [
  new RegExp(`^brighter than (?:${MAG} )?(-?\\d{1,2}(?:\\.\\d)?)(?: ${MAG})?$`, 'u'),
  new RegExp(`^(?:below|under|above|to|up to|down to|limit|limiting|max|<) ${MAG} (-?\\d{1,2}(?:\\.\\d)?)$`, 'u'),
  new RegExp(`^${MAG} (?:limit |below |under |< ?|to )?(-?\\d{1,2}(?:\\.\\d)?) (?:or|and) brighter$`, 'u'),
  new RegExp(`^${MAG} (?:limit (?:of )?|below |under |< ?|to )(-?\\d{1,2}(?:\\.\\d)?)$`, 'u'),
];

export const takeBrighter = (sentence: Sentence): string | null =>
  takeFirst(
    sentence,
    LONGEST,
    ({ plain }) => BRIGHTER.map((pattern) => pattern.exec(plain)?.[1]).find((found) => found !== undefined) ?? null,
    /^(?:down|and|with|only)$/u,
  )?.text ?? null;

const LEADS = /^(?:in|within|around|of|inside)$/u;
/** Of two words, "canes venatici". */
const LONGEST_CONSTELLATION = 2;

export interface Within {
  /** Its name in full, and as typed. */
  readonly name: string;
  readonly text: string;
  readonly at: number;
}

/** "doubles in cass": the constellation; its words are taken. */
export const takeConstellation = (sentence: Sentence): Within | null => {
  for (const run of runsOf(sentence, LONGEST_CONSTELLATION)) {
    const lead =
      wordBefore(sentence, run.at) === 'the' ? wordBefore(sentence, run.at - 1) : wordBefore(sentence, run.at);
    const meant = LEADS.test(lead) && run.plain.length > 2 ? constellationMeant(run.plain) : undefined;
    const next = sentence.words[run.at + run.count]?.plain ?? '';
    // "in the andromeda galaxy" is the galaxy.
    if (meant === undefined || /^(?:galaxy|nebula|cluster|double)$/u.test(next)) continue;
    take(sentence, run);
    return { name: constellationName(meant), text: run.plain, at: run.at };
  }
  return null;
};
