/** What narrows a request: a least height, a faintest magnitude, a constellation. */
import { constellationMeant, constellationName } from '../../../catalogue/index.js';
import { runAt, runsOf, take, takeFirst, wordBefore, type Run, type Sentence } from './words.js';

const LONGEST = 5;

/** "above 60", "higher than 40 degrees", "at least 30°"; a bare number is degrees only after words of height. */
const ABOVE =
  /^(?:(?:altitude )?(?:above|over|higher than)|(?:with )?(?:an )?altitude (?:of )?(?:above|over|at least)) (\d{1,2})(?: ?°| ?deg| degrees?)?(?: (?:high|up|altitude))?$/u;
const AT_LEAST =
  /^(?:at least|clears?|reach(?:es)?|gets? (?:to|over)|pass(?:es)?|min(?:imum)?(?: of)?|more than|>=?) (\d{1,2}) ?(?:°|deg|degrees?)(?: (?:high|up|altitude))?$/u;
/** "What time is it at 45 degrees": from then on it is higher. */
const AT_A_HEIGHT = /^at (\d{1,2}) ?(?:°|deg|degrees?)(?: (?:high|up|altitude|elevation))?$/u;
/** "Jupiter altitude 30 when". */
const AT_ALTITUDE = /^(?:altitude|alt|height|elevation) (?:of )?(\d{1,2})(?: ?°| ?deg| degrees?)?$/u;
/** "When is M 83 30 degrees up", "when will M 31 be 60 degrees high". */
const SO_FAR_UP =
  /^(?:be |is |gets? |reach(?:es)? |to )?(\d{1,2}) ?(?:°|deg|degrees?) (?:up|high|above(?: the)?(?: horizon)?|in altitude|of altitude|altitude|elevation)$/u;
/** The number is of something else. */
const OTHER_UNIT =
  /^(?:am|pm|mm|cm|inch(?:es)?|in|"|″|arc\w*|mag\w*|minutes?|mins?|hours?|hrs?|seconds?|secs?|people|targets?|objects?|stars?|mph|percent|%|o'?clock)$/u;

const aboveIn = (sentence: Sentence, run: Run): string | null => {
  const isTimeAsked = sentence.words.some(({ plain }) => /^(?:when|whens|wen|time|hour)$/u.test(plain));
  const found =
    ABOVE.exec(run.plain) ??
    AT_LEAST.exec(run.plain) ??
    (isTimeAsked ? (SO_FAR_UP.exec(run.plain) ?? AT_A_HEIGHT.exec(run.plain) ?? AT_ALTITUDE.exec(run.plain)) : null);
  const next = sentence.words[run.at + run.count]?.plain ?? '';
  const isUnitSaid = /(?:°|deg|degrees?)\b/u.test(run.plain);
  return found === null || (!isUnitSaid && OTHER_UNIT.test(next)) ? null : (found[1] ?? null);
};

export const takeAbove = (sentence: Sentence): string | null =>
  takeFirst(sentence, LONGEST, (run) => aboveIn(sentence, run), /^(?:is|while|and|only)$/u)?.text ?? null;

/** "between 30 and 60 degrees": the height from and to. */
const BETWEEN =
  /^(?:altitudes? )?(?:between|from) (\d{1,2})(?: ?°| ?deg| degrees?)? (?:and|to) (\d{1,2})(?: ?°| ?deg| degrees?)(?: (?:high|up|altitude))?$/u;
const BELOW =
  /^(?:below|under|lower than|at most|no higher than) (\d{1,2}) ?(?:°|deg|degrees?)(?: (?:high|up|altitude))?$/u;
const LONGEST_BETWEEN = 8;

export interface Heights {
  readonly above: string | null;
  readonly below: string | null;
}

export const takeHeights = (sentence: Sentence): Heights => {
  const between = takeFirst(
    sentence,
    LONGEST_BETWEEN,
    ({ plain }) => BETWEEN.exec(plain)?.slice(1, 3).join(' ') ?? null,
    /^(?:is|while|and|only)$/u,
  )?.text;
  const [from, to] = between?.split(' ') ?? [];
  if (from !== undefined && to !== undefined) return { above: from, below: to };
  const below = takeFirst(
    sentence,
    LONGEST,
    ({ plain }) => BELOW.exec(plain)?.[1] ?? null,
    /^(?:is|while|and|only|but)$/u,
  );
  return { above: takeAbove(sentence), below: below?.text ?? null };
};

const ARCMIN =
  /^(?:larger|bigger|wider|more|greater|over) than (\d{1,3}(?:\.\d+)?) ?(?:arc ?min(?:ute)?s?|'|′)(?: across| wide)?$/u;
const ARCSEC =
  /^(?:wider|larger|more|greater|over|separated by more) than (\d{1,3}(?:\.\d+)?) ?(?:arc ?sec(?:ond)?s?|as|"|″|'')(?: apart)?$/u;

/** "1 to 2 arcsec": from the lesser on. */
const ARCSEC_RANGE =
  /^(?:from )?(\d{1,3}(?:\.\d+)?) ?(?:to|-|–|and) ?\d{1,3}(?:\.\d+)? ?(?:arc ?sec(?:ond)?s?|as|"|″|'')(?: apart)?$/u;

/** "Which nebulae fit a 3 degree field", "fill 2 degrees", "fit in 40 arcmin". */
const FIELD =
  /^(?:fits?|fitting|fill|fills|filling) (?:in |into |inside |within )?(?:(?:a|an|my|the|one) )?(\d{1,3}(?:\.\d+)?)[ -]?(°|deg|degrees?|arc ?min(?:ute)?s?|'|′)(?: field)?(?: of view)?(?: fov)?$/u;
const LONGEST_FIELD = 8;
/** From such a part of the field on they fill some of it; common practice, no source. */
const LEAST_OF_FIELD = 6;
const MOST_FIELD_ARCMIN = 1200;

/** The most and the least size that suit a field, in arcminutes. */
const takeField = (sentence: Sentence): { readonly larger: string; readonly smaller: string } | null => {
  const found = takeFirst(
    sentence,
    LONGEST_FIELD,
    ({ plain }) => FIELD.exec(plain)?.slice(1, 3).join(' ') ?? null,
    /^(?:that|which|will|can|to|would)$/u,
  )?.text;
  const [figure, unit = ''] = found?.split(' ') ?? [];
  const arcmin = Number(figure ?? 0) * (/^(?:°|deg)/u.test(unit) ? 60 : 1);
  return arcmin < 1 || arcmin > MOST_FIELD_ARCMIN
    ? null
    : { larger: String(Math.round(arcmin / LEAST_OF_FIELD)), smaller: String(Math.round(arcmin)) };
};

/** "galaxies larger than 10 arcmin", "doubles wider than 5 arcsec". */
export const takeSizes = (
  sentence: Sentence,
): { readonly larger: string | null; readonly smaller: string | null; readonly wider: string | null } => {
  const field = takeField(sentence);
  if (field !== null) return { ...field, wider: null };
  const sizeIn = (pattern: RegExp): string | null =>
    takeFirst(sentence, LONGEST, ({ plain }) => pattern.exec(plain)?.[1] ?? null, /^(?:and|that|are|is|with)$/u)
      ?.text ?? null;
  return { larger: sizeIn(ARCMIN), smaller: null, wider: sizeIn(ARCSEC) ?? sizeIn(ARCSEC_RANGE) };
};

const MESSIER = /^messiers?(?: objects?| targets?| list| catalog(?:ue)?)?$/u;
/** Whether Messier's own are asked for, whichever of them; "Messier 31" is one target. */
export const takeMessier = (sentence: Sentence): boolean =>
  takeFirst(
    sentence,
    2,
    (run) =>
      MESSIER.test(run.plain) && !/^\d/u.test(sentence.words[run.at + run.count]?.plain ?? '') ? 'messier' : null,
    /^(?:the|only|just|all)$/u,
  ) !== null;

const MAG = 'mag(?:nitudes?)?';
const BRIGHTER: readonly RegExp[] = [
  new RegExp(`^brighter than (?:${MAG} )?(-?\\d{1,2}(?:\\.\\d)?)(?:st|nd|rd|th)?(?: ${MAG})?$`, 'u'),
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
  readonly isSeveral: boolean;
}

const JOINS = /^(?:and|or|&|n|plus|und)$/u;
/** "… in Cas, Per and And": those that follow the first, joined by commas or words. */
const constellationsAfter = (sentence: Sentence, from: number): readonly string[] => {
  const { words } = sentence;
  const found: string[] = [];
  for (let at = from; at < words.length;) {
    const isJoined = JOINS.test(words[at]?.plain ?? '');
    if (!isJoined && words[at - 1]?.hasComma !== true) break;
    const begins = isJoined ? at + 1 : at;
    const run = [LONGEST_CONSTELLATION, 1]
      .map((count) => runAt(sentence, begins, count))
      .find((next) => next !== null && next.plain.length > 2 && constellationMeant(next.plain) !== undefined);
    const meant = run == null ? undefined : constellationMeant(run.plain);
    if (run == null || meant === undefined) break;
    take(sentence, { at, count: begins - at + run.count });
    found.push(meant);
    at = begins + run.count;
  }
  return found;
};

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
    const others = constellationsAfter(sentence, run.at + run.count);
    const name = [meant, ...others].map(constellationName).join(', ');
    return { name, text: run.plain, at: run.at, isSeveral: others.length > 0 };
  }
  return null;
};
