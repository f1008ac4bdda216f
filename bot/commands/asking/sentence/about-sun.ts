/**
 * Sentences about the Sun beside a target, and about what is looked at by day: near it, far from it, on the way from one to another. Targets
 * are read first, slips mended, and places only of what is left: no target becomes a town of its name where the Sun is asked about.
 */
import { resolveTarget } from '../../../catalogue/index.js';
import { isProblem, problem, type Problem } from '../../../ground/problem.js';
import { fittingChoices } from '../../../reply/reply.js';
import { commandLine } from '../question-parts.js';
import type { Known, Reading } from './asked.js';
import { DANGER, ENDS, leftBefore, partsOf, type SunParts } from './sun-parts.js';
import type { NamedTarget } from './targets.js';
import { isTalkOfSun } from '../sun-likeness/heard.js';
import { isLittle, runsOf } from './words.js';
import { asksApart, GOES, hourOf, LOOKS } from './sun-hour.js';
import {
  AFTER_SUNSET,
  BEFORE_SUNRISE,
  prepared,
  RISES_BEFORE,
  saysByDay,
  SETS_AFTER,
  STOPS_IN_MORNING,
  SUN_RISING,
  THIS_AFTERNOON,
} from './sun-words.js';

const SAFE =
  /\b(?:safe|dangerous|danger|ok|okay|alright|risky)\b.*\b(?:look|point|slew|go|aim|observe|move|image|view)\w*/u;
const RISES_SETS = /\b(?:when|what time|rise|set|up)\b/u;
/** Other questions: of eclipses, and of a miss. */
const NOT_OURS = /\beclipses?\b|\b(?:landed|lands|ended up)\b/u;
const NEARNESS =
  /\b(?:near\w*|close\w*|far|dist\w*|degrees?|deg|separation|elongation|angle|gap|behind|beside|clear of|away)\b/u;
const BESIDE = new RegExp(
  `${NEARNESS.source}|\\b(?:way|from|to|past|between|cross\\w*|hit\\w*|safe|danger\\w*|block\\w*)\\b`,
  'u',
);
const STARTS = /^(?:from|leaving|leave|off|on|between|after)$/u;
export const WANTS = /\b(?:want\w*|wanna|need|next|fancy|rather|would like|i'd like|then)\b/u;
const WAITS = /\b(?:remind|tell|warn|alert|ping|let) (?:me|us)\b.*\b(?:when|if|once|as soon as|before)\b/u;
const NO_WAITING =
  'No reminder can wait for the Sun to be near or clear: it may wait for an hour, a height or the dark (help remind).';

/** What the way ends at and begins from; none ends it where only its beginning is said, null where there are too many. */
interface Ends {
  readonly end: string | undefined;
  readonly start: string | undefined;
  /** Asked about as well, and for another line. */
  readonly other?: string;
}

/** One target and what nobody knows: it ends the way unless a word says that it begins it. */
const endsOfOne = (plain: string, only: NamedTarget, { unknownEnd, unknownStart, sentence }: SunParts): Ends => {
  const isStart = STARTS.test(leftBefore(sentence, only.at)) && (unknownEnd !== null || !NEARNESS.test(plain));
  return isStart
    ? { end: unknownEnd ?? undefined, start: only.text }
    : { end: only.text, start: unknownStart ?? undefined };
};

const endsOfTwo = (
  plain: string,
  [first, second]: readonly [NamedTarget, NamedTarget],
  { sentence, isWay: isKnownWay }: SunParts,
): Ends => {
  const leads = (name: NamedTarget, pattern: RegExp): boolean => pattern.test(leftBefore(sentence, name.at));
  const start = [first, second].find((name) => leads(name, STARTS));
  // "to Vega and then to Venus" ends at the latter.
  const end = [second, first].find((name) => name !== start && leads(name, ENDS));
  const isWay =
    isKnownWay === true || start !== undefined || end !== undefined || GOES.test(plain) || WANTS.test(plain);
  if (!isWay) return { end: first.text, start: undefined, other: second.text };
  const begun = start ?? (end === first ? second : first);
  return { end: (begun === first ? second : first).text, start: begun.text };
};

const endsOf = (plain: string, parts: SunParts): Ends | null => {
  const [first, second, ...more] = parts.named;
  if (first === undefined) return { end: parts.unknownEnd ?? undefined, start: undefined };
  if (second === undefined) return endsOfOne(plain, first, parts);
  return more.length > 0 ? null : endsOfTwo(plain, [first, second], parts);
};

const WHICH = 'which-target';

const askWhich = (plain: string, parts: SunParts, ends: Ends | null): Problem => {
  const at = hourOf(plain, parts);
  const line = (target: string, from?: string): string =>
    commandLine('sun', target, {
      from,
      at: at === 'now' ? undefined : at,
      site: parts.site ?? undefined,
      mount: parts.mount ?? undefined,
    });
  if (ends === null) {
    const names = parts.named.map(({ text }) => text);
    const ways = names.slice(1).map((name, i) => ({
      label: `From ${names[i] ?? ''} to ${name}`,
      run: line(name, names[i]),
    }));
    return problem(WHICH, 'Which of these ways? I reckon one at a time.', fittingChoices(ways));
  }
  const { start } = ends;
  if (start !== undefined)
    return problem(
      WHICH,
      `From ${start} to which target? Such as ${line('Venus', start)}`,
      fittingChoices([{ label: `How near the Sun is to ${start}`, run: line(start) }]),
    );
  return problem(
    WHICH,
    `Near which target, or on the way to which? Such as ${line('Venus')}, or ${line('Venus', 'Vega')}`,
    fittingChoices([
      { label: 'The way to Venus', run: line('Venus') },
      {
        label: 'Where the Sun itself stands',
        run: commandLine('altitude', 'Sun', { at: at === 'now' ? undefined : at }),
      },
      { label: 'Sunrise and sunset', run: 'dark' },
    ]),
  );
};

const SEES =
  /\b(?:visible|see|seen|seeing|find|finding|spot|look\w*|view\w*|watch\w*|catch|observ\w*|shows?|possible)\b/u;
const BY_MOUNT =
  /\b(?:go ?to|goto\w*|slew\w*|mount|point\w*|aim\w*|track\w*|way|route|path|move\w*|far|near\w*|clos\w*|distance|degrees|elongation)\b/u;
const NOT_BY_HAND =
  'No, not by eye or by hand: by day the sky hides it, and one sweep past the Sun blinds. Only a mount that goes there by itself may show it, the caps on until it has stopped.';

/** By day one finds it with a mount that is sent there, and not by looking about. */
const isSoughtByEye = (plain: string, end: string | undefined): boolean =>
  end !== undefined && !/^(?:sun|moon)$/u.test(end) && saysByDay(plain) && SEES.test(plain) && !BY_MOUNT.test(plain);

const lineOf = (plain: string, parts: SunParts, { start, end, other }: Ends): Reading => {
  const line = commandLine('sun', end ?? 'sun', {
    at: hourOf(plain, parts),
    site: parts.site ?? undefined,
    from: start ?? (parts.isFromHome ? 'home' : undefined),
    mount: parts.mount ?? undefined,
    first: start === undefined && !parts.isFromHome && asksApart(plain) ? 'apart' : undefined,
  });
  if (WAITS.test(plain)) return { line, note: NO_WAITING };
  const byEye = isSoughtByEye(plain, end) ? { unsure: NOT_BY_HAND } : {};
  return other === undefined ? { line, ...byEye } : { line, ...byEye, note: `One at a time: next ask sun ${other}.` };
};

const STOPS_BEFORE = 'Stop and put the caps on well before sunrise.';
const STOPS_NOW = 'Stop before any of the Sun is up: caps on, and the tube turned away from where it rises.';
const WAITS_FOR_SUNSET = 'Caps stay on until the Sun has set; never sweep for it while any of the Sun is up.';

interface NightEnd {
  readonly first?: string;
  readonly note?: string;
  readonly unsure?: string;
}

/** What is asked of the night's ends, and what is to be said with it; null: it is of an hour by day. */
const nightEnd = (plain: string): NightEnd | null => {
  if (SUN_RISING.test(plain)) return { unsure: STOPS_NOW };
  if (RISES_BEFORE.test(plain) && !SAFE.test(plain)) return { first: 'rise', note: STOPS_BEFORE };
  if (SETS_AFTER.test(plain) && !SAFE.test(plain)) return { first: 'set', note: WAITS_FOR_SUNSET };
  if (BEFORE_SUNRISE.test(plain) || STOPS_IN_MORNING.test(plain)) return { note: STOPS_BEFORE };
  return AFTER_SUNSET.test(plain) ? { note: WAITS_FOR_SUNSET } : null;
};

/** Before sunrise and after sunset there is no Sun on the way: how it stands in the night, and from when or till when. */
const atNightEnd = (plain: string, { named, when: { night, hour }, site, isWay }: SunParts): Reading | null => {
  const [only, ...more] = named;
  if (only === undefined || more.length > 0 || isWay === true || hour !== null) return null;
  const end = nightEnd(plain);
  if (end === null) return null;
  const on = night === null || /^(?:tonight|today|tomorrow)$/u.test(night) ? undefined : night;
  const { first, ...words } = end;
  return { line: commandLine('up', only.text, { on, first, site: site ?? undefined }), ...words };
};

export const answered = (plain: string, parts: SunParts): Reading | Problem => {
  const atEnd = atNightEnd(plain, parts);
  if (atEnd !== null) return atEnd;
  const ends = endsOf(plain, parts);
  return ends?.end === undefined ? askWhich(plain, parts, ends) : lineOf(plain, parts, ends);
};

/** "venice sun": nothing but the Sun and a name. */
const FEW = 3;

const nothingNamed = (plain: string, parts: SunParts, begins: boolean): Reading | Problem | null => {
  // Nothing is waited for but what the Sun itself does.
  if (!begins && WAITS.test(plain)) return null;
  const isAsked = begins || BESIDE.test(plain) || parts.sentence.words.length <= FEW;
  const end = isAsked ? (parts.unknownEnd ?? parts.unread) : null;
  if (end !== null) return lineOf(plain, parts, { start: undefined, end });
  return begins ? answered(plain, parts) : null;
};

/** "Sun altitude at 17:30": where it stands itself. */
const SUN_STANDS =
  /^(?:the )?(?:altitude|height|elevation|azimuth|alt\/?az) of (?:the )?sun\b|^(?:the )?sun'?s? (?:altitude|height|elevation|azimuth|alt)\b/u;

/** So many words that no question of the Sun beside a target has: "sun sign of my wife is leo". */
const MOST_LEFT = 2;
const isBesideTalk = (typed: string, { sentence }: SunParts): boolean =>
  runsOf(sentence, 1).filter(
    ({ plain }) => !isLittle(plain) && !BESIDE.test(plain) && !GOES.test(plain) && !LOOKS.test(plain),
  ).length >= MOST_LEFT && isTalkOfSun(typed);

/** The Sun named beside another target, or first of all; null: it is not asked about so. */
export const besideSun = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  if (SUN_STANDS.test(plain)) {
    const parts = partsOf(typed.replace(/\b(?:altitude|height|elevation|azimuth|alt(?:\/az)?|of)\b/giu, ' '), known);
    return parts.named.length > 0
      ? null
      : { line: commandLine('altitude', 'Sun', { at: hourOf(plain, parts), site: parts.site ?? undefined }) };
  }
  if (NOT_OURS.test(plain) || !/\bsun/u.test(plain)) return null;
  const begins = /^\/?sun(?:'?s)?\s+\S/u.test(prepared(plain).trim());
  const rest = typed.replace(/^\S+\s*/u, '');
  // Coordinates and whole names are the command's own to read.
  if (begins && !isProblem(resolveTarget(known.catalogue, rest))) return { line: `sun ${rest}` };
  const parts = partsOf(typed, known);
  if (!parts.isSunNamed || isBesideTalk(typed, parts)) return null;
  return parts.named.length > 0 ? answered(plain, parts) : nothingNamed(plain, parts, begins);
};

const asksByDay = (plain: string, { isSunNamed, named }: SunParts): boolean => {
  const isOfSun = isSunNamed || /\bsunspots?\b/u.test(plain);
  const isWay = GOES.test(plain) && named.length > 0;
  const isDay = saysByDay(plain) && (isWay || LOOKS.test(plain) || (THIS_AFTERNOON.test(plain) && named.length > 0));
  return (
    isDay ||
    SAFE.test(plain) ||
    (DANGER.test(plain) && named.length > 0) ||
    (isOfSun && LOOKS.test(plain) && !RISES_SETS.test(plain))
  );
};

/** Whether a plug may be pulled is no question of the sky. */
const OF_WIRES = /\b(?:un ?plug\w*|plug\w*|cables?|leads?|wires?|usb|rs ?-?232|power|switch(?:ed|ing)? (?:it )?off)\b/u;

/** What is looked at by day, or asked to be safe: the Sun comes first, whatever was asked. */
export const byDay = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  if (!saysByDay(plain) && !SAFE.test(plain) && !DANGER.test(plain) && !/\bsun/u.test(plain)) return null;
  const parts = partsOf(typed, known);
  if (!asksByDay(plain, parts)) return null;
  if (OF_WIRES.test(plain) && parts.named.length === 0 && !/\bsun/u.test(plain) && !saysByDay(plain)) return null;
  return parts.named.length === 0 ? lineOf(plain, parts, { start: undefined, end: 'sun' }) : answered(plain, parts);
};
