/** A sentence with its parts told apart: which target, night, hour, place, kit and sky it names, and the words as a whole. */
import { isProblem, type Problem } from '../../../ground/problem.js';
import { isNamed, resolveTarget } from '../../../catalogue/index.js';
import { countryAt, type Places, type Spot } from '../../../places/index.js';
import type { Command } from '../../core/command.js';
import type { UtcMs } from '../../../sky/types.js';
import { commandLine } from '../question-parts.js';
import { kindIn, kindsBeside, takeKit, takeSky } from './kit.js';
import { sameSiteName } from '../resolve-site.js';
import { spellerFor, type Spelt } from '../spelling/known-words.js';
import { withComingHour } from './coming-hour.js';
import type { DayAt } from './day-at.js';
import { takeStandpoint } from './directions.js';
import { takeHoursBetween, type HoursBetween } from './hours-between.js';
import { takeBrighter, takeConstellation, takeHeights, takeMessier, takeSizes, type Within } from './limits.js';
import { takeCoordinates, takeGuess, takeSlip, takeTargets, type NamedTarget } from './targets.js';
import { partOfNight, takeWhen, type When } from './when.js';
import type { PlaceKnowledge } from './place-knowledge.js';
import { takePlace, takeUnknownPlace, townLeft } from './where.js';
import { isLittle, sentenceOf, type Sentence } from './words.js';

export interface Known extends Spelt {
  readonly places: () => Places;
  /** Of the member and the club, for sentences that name one. */
  readonly siteNames: readonly string[];
  readonly nowUtcMs: UtcMs;
  /** Where the asker usually stands; null or left out where nobody knows. */
  readonly day?: DayAt | null;
  /** Where that is. */
  readonly usual?: Spot | null;
  /** For words that are a command's line. */
  readonly allCommands?: readonly Command[];
}

export interface Asked {
  /** All of it, in lower case, without the marks at its ends. */
  readonly plain: string;
  readonly typed: string;
  /** As it came, slips and all: for those who read more than questions. */
  readonly original: string;
  readonly when: When;
  /** Both ends of the hours that are asked for. */
  readonly between: HoursBetween | null;
  readonly place: string | null;
  /** A name that no list has. */
  readonly isPlaceUnknown: boolean;
  /** What may be the name of a place that no list has; the answer is for the usual site, and says so. */
  readonly perhapsPlace: string | null;
  /** One of the asker's saved sites, or the club's. */
  readonly isPlaceSaved: boolean;
  readonly kit: string | null;
  readonly sky: string | null;
  readonly kind: string | null;
  readonly targets: readonly string[];
  /** Words that no part was made of and that are more than glue. */
  readonly left: readonly string[];
  /** All words that no part was made of. */
  readonly unread: readonly Unread[];
  /** Least height in degrees, faintest magnitude, and constellation, as typed; null: none was said. */
  readonly above: string | null;
  readonly brighter: string | null;
  readonly constellation: string | null;
  readonly below: string | null;
  /** Kinds beside the first. */
  readonly kindsToo: readonly string[];
  readonly isMessierOnly: boolean;
  /** Least size in arcminutes, least separation in arcseconds. */
  readonly larger: string | null;
  /** Most size in arcminutes, of a field that it is to fit. */
  readonly smaller: string | null;
  readonly wider: string | null;
}

export interface Unread {
  readonly at: number;
  readonly typed: string;
  readonly plain: string;
}

/** A line that answers, and how sure it is that a question of ours was meant. */
export interface Reading {
  readonly line: string;
  readonly note?: string;
  /** Stands before the answer, and keeps it from being called good: it may not be for what was meant. */
  readonly unsure?: string;
  /** Asked in another language: a question, however it begins. */
  readonly isAbroad?: true;
  /** So many words were said that play no part in the answer; the note names them. */
  readonly unread?: number;
  /** All its words went into it, however the parts were told apart. */
  readonly usesAll?: true;
}

/** What a rule makes of a sentence; null: it is not this. */
export type Rule = (asked: Asked) => Reading | Problem | null;

export const says = ({ plain }: Asked, pattern: RegExp): boolean => pattern.test(plain);

/** Asks how two targets stand to each other. */
export const APART =
  /\b(?:separations?|separated|(?<!\d )(?<!in )sep(?! (?:\d|20))|apart|distance (?:between|from|of)|angular distance|position angle|how (?:close|near|far)|how many (?:deg|degrees?)|(?:close|near) (?:to )?(?:each other|together)|gap between|angle between|degrees (?:between|from)|together|(?:near|close to|next to|beside) (?:to )?(?:mercury|venus|mars|jupiter|saturn|uranus|neptune))\b/u;

/** Also "is the Moon near Jupiter": no town of that name. */
const OF_PAIR = new RegExp(`${APART.source}|\\bmoon\\b.*\\bnear\\b`, 'u');

/** The longest questions are of some forty words; a target with a slip is looked for in those with few words unread. */
const MOST_UNREAD_FOR_SLIP = 4;
const SHORT = 3;
const ASKS =
  /\b(?:up|see|look\w*|high|where\w*|when|rise\w*|sets?|setting|visible|find|point|good|best|tonight|remind|altitude)\b/u;

const unreadIn = ({ words, taken }: Sentence): string[] =>
  words.filter(({ plain }, i) => taken[i] !== true && !isLittle(plain)).map(({ plain }) => plain);

/** Whether a name with a slip may stand among the words that are unread: nothing else is named, and they are few. */
const mayHoldSlip = (
  plain: string,
  sentence: Sentence,
  { named, isTown }: { readonly named: readonly NamedTarget[]; readonly isTown: boolean },
): boolean => {
  const left = sentence.taken.filter((used) => !used).length;
  const isNothingNamed = named.every(({ text }) => text === 'moon' || text === 'sun');
  return (
    (ASKS.test(plain) || left <= SHORT) &&
    isNothingNamed &&
    !isTown &&
    unreadIn(sentence).length <= MOST_UNREAD_FOR_SLIP
  );
};

/** A slip that is sure, or, where nothing but a name was typed, one that is near to some. */
const slipIn = (sentence: Sentence, { catalogue, commands }: Known): NamedTarget | null =>
  takeSlip(sentence, catalogue, spellerFor({ catalogue, commands }).isKnown) ??
  (sentence.words.every((_, i) => sentence.taken[i] === true || !isLittle(sentence.words[i]?.plain ?? ''))
    ? takeGuess(sentence, catalogue)
    : null);

export const placeKnowledge = ({ catalogue, commands, places, siteNames, usual }: Known): PlaceKnowledge => ({
  places,
  siteNames,
  isHome: (country) => usual != null && countryAt(places(), usual) === country,
  isTarget: (text) => isNamed(resolveTarget(catalogue, text)),
  isSeveralTargets: (text) => isProblem(resolveTarget(catalogue, text)),
  isSlip: (text) => {
    const found = resolveTarget(catalogue, text);
    return !isProblem(found) && found.isSlip === true;
  },
  isWord: spellerFor({ catalogue, commands }).isKnown,
});

/** What is of one hour alone is of the first of two. */
const takeTimes = (sentence: Sentence, plain: string, { nowUtcMs, day }: Known): Pick<Asked, 'when' | 'between'> => {
  const between = takeHoursBetween(sentence);
  const when = withComingHour(takeWhen(sentence, nowUtcMs), plain, day);
  return { between, when: between === null ? when : { ...when, hour: between.from, isOneInstant: false } };
};

export const askedOf = (typed: string, plain: string, known: Known, original: string): Asked => {
  const sentence = sentenceOf(typed);
  const knowledge = { ...placeKnowledge(known), isOfPair: OF_PAIR.test(plain) };
  const coordinates = takeCoordinates(sentence, plain, known.catalogue);
  const brighter = takeBrighter(sentence);
  const sizes = takeSizes(sentence);
  const kit = takeKit(sentence);
  const sky = takeSky(sentence);
  const { above, below } = takeHeights(sentence);
  const kind = kindIn(sentence);
  const kindsToo = kindsBeside(sentence);
  const isMessierOnly = takeMessier(sentence);
  const within = takeConstellation(sentence);
  const { when, between } = takeTimes(sentence, plain, known);
  takeStandpoint(sentence, known.siteNames);
  const placed = takePlace(sentence, knowledge);
  const unknown = placed === null ? takeUnknownPlace(sentence, knowledge) : null;
  const place = placed ?? (unknown?.isPerhaps === false ? unknown.name : null);
  const { named, constellation } = namedIn(
    sentence,
    { coordinates, within, isLimit: isOfSeveral(plain, kind, { isMessierOnly, within }) },
    known,
  );
  const town = place ?? townLeft(sentence, knowledge, named.length > 0);
  if (town !== place) sentence.taken.fill(true);
  const slip = mayHoldSlip(plain, sentence, { named, isTown: town !== place }) ? slipIn(sentence, known) : null;
  return {
    plain,
    typed,
    original,
    when,
    between,
    place: town,
    isPlaceUnknown: unknown?.isPerhaps === false,
    perhapsPlace: town === null && unknown?.isPerhaps === true ? unknown.name : null,
    isPlaceSaved: town !== null && known.siteNames.some((name) => sameSiteName(name, town)),
    kit,
    sky,
    kind: slip === null ? kind : kindIn(sentence),
    targets: (slip === null ? named : [slip]).map(({ text }) => text),
    left: unreadIn(sentence),
    unread: sentence.words.flatMap(({ typed: word, plain: folded }, at) =>
      sentence.taken[at] === true ? [] : [{ at, typed: word, plain: folded }],
    ),
    above,
    below,
    brighter,
    constellation,
    kindsToo,
    isMessierOnly,
    ...sizes,
  };
};

/** Words that ask for more than one thing. */
const OF_SEVERAL =
  /\b(?:any|anything|something|things|stuff|objects?|targets?|sights?|showpieces?|highlights?|everything|galaxies|nebulae|nebulas|clusters|doubles|globulars|binaries|planets|what(?:'s| is|s)? (?:there )?(?:up |good |worth \w+ |visible )?in|(?<=^|what is |what's |whats |which is |which are )(?:the )?(?:very )?(?:best|nicest|finest|easiest|prettiest)(?: (?:ones?|bits?|thing|sight))? (?:in|of)|what (?:can|could|should) (?:i|we) (?:see|look at|find|observe|image))\b/u;

const isOfSeveral = (
  plain: string,
  kind: string | null,
  { isMessierOnly, within }: { readonly isMessierOnly: boolean; readonly within: Within | null },
): boolean =>
  isMessierOnly || within?.isSeveral === true || OF_SEVERAL.test(plain) || (kind !== null && /s$|ae$/u.test(kind));

interface Found {
  readonly coordinates: NamedTarget | null;
  /** A constellation in which something is. */
  readonly within: Within | null;
  /** Several things are asked for: the constellation is a limit. */
  readonly isLimit: boolean;
}

/** The targets, and the constellation where it is a limit; in which one a named target lies is known anyhow. */
const namedIn = (
  sentence: Sentence,
  { coordinates, within, isLimit }: Found,
  { catalogue }: Known,
): { readonly named: readonly NamedTarget[]; readonly constellation: string | null } => {
  if (coordinates !== null) return { named: [coordinates], constellation: null };
  const named = takeTargets(sentence, catalogue);
  if (within === null || named.some(({ text }) => text !== 'moon' && text !== 'sun'))
    return { named, constellation: null };
  if (isLimit) return { named, constellation: within.name };
  return { named: [{ text: within.text, at: within.at }], constellation: null };
};

/** A target of several words is quoted only where it would be read otherwise. */
const given = (value: string | null | undefined): string | undefined => value ?? undefined;

/** Which night, and which hour of it: that a morning belongs to the evening before is the time rooms' to say. */
const nightAndHour = ({ night, hour, isOneInstant, isMorning }: When): Pick<When, 'night' | 'hour'> => {
  if (isOneInstant) return { night: null, hour: `${night ?? ''} ${hour ?? ''}` };
  if (!isMorning || night === null) return { night, hour };
  return { night: null, hour: night === 'tomorrow' ? null : `${night} ${MORNING}` };
};
const MORNING = '5am';

/** Without its hour, for commands that take none: "tomorrow at 3am" and "tomorrow morning" are of tonight. */
export const nightAlone = (when: When): When => {
  const isOfTonight = (when.isOneInstant || when.isMorning) && when.night === 'tomorrow';
  return { ...when, night: isOfTonight ? null : when.night, hour: null, isOneInstant: false, isMorning: false };
};

/** The line of a command about a night, with what the sentence says of it. */
export const nightLine = (
  command: string,
  bare: string,
  asked: Asked,
  more: Readonly<Record<string, string | null>> = {},
): Reading => {
  const { when, place, kit, sky } = asked;
  const part = command === 'up' ? partOfNight(asked.when, asked.plain) : null;
  const { night, hour } = part ?? nightAndHour(when);
  const line = commandLine(command, bare, {
    on: given(night),
    at: given(hour),
    site: given(place),
    with: given(kit),
    sky: given(sky),
    ...Object.fromEntries(Object.entries(more).map(([name, value]) => [name, given(value)])),
  });
  const note = [when.hourNote, when.note].filter((words) => words != null).join(' ');
  return note === '' ? { line } : { line, note };
};

/** The line of a command about an instant: the night and the hour are one. */
export const instantLine = (
  command: string,
  bare: string,
  { when, place }: Asked,
  more: Readonly<Record<string, string>> = {},
): Reading => {
  const hour = when.hour ?? (when.isMorning && when.night !== null ? MORNING : null);
  const at = [when.night, hour].filter((part) => part !== null).join(' ');
  const line = commandLine(command, bare, { at: at === '' ? undefined : at, site: given(place), ...more });
  return when.hourNote === undefined || when.hour === null ? { line } : { line, note: when.hourNote };
};
