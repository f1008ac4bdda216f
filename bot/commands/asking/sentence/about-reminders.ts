/** Sentences about reminders: what is to be waited for, and which are to be said no more. */
import { problem, type Problem } from '../../../ground/problem.js';
import { fittingChoices } from '../../../reply/reply.js';
import { commandLine } from '../question-parts.js';
import { says, type Asked, type Reading, type Rule } from './asked.js';
import { daysIn, eventIn, isLessOften, isRepeated } from './about-repeats.js';
import { numberOf } from './words.js';

const REMIND =
  /^(?:poke|buzz|text|message|shout at) (?:me|us)\b|^remind\b|^alarm (?:at |for )?\d|^alarm in\b|\bdon'?t let (?:me|us) miss\b|^set (?:a )?reminder\b|^(?:a )?(?:weekly|daily|nightly) (?:reminder|alarm)\b|\b(?:remind|notify|alert|nudge|ping|warn|wake)\b(?: me| us| everyone| everybody| the channel| the club)|^(?:set |make |add )?(?:a |an )?(?:reminder|alarm)s?\b (?:for|at|about|when|to|before)|\btell (?:me|us) (?:(?:when|once|as soon as|before)|(?:a|the|an|one|two|\d+) \w+ before)\b|\bgive (?:me|us) a (?:shout|nudge|ping|call|ring|poke|heads?[- ]?up|reminder|warning)\b|\blet (?:me|us) know (?:\S+ ){0,4}?(?:when|once|as soon as|before)\b/u;

/** "tell me when the Moon rises" asks for the hour; to be woken one says remind, or let me know. */
const ASKS_HOUR =
  /\btell (?:me|us) when\b.*\b(?:rises?|sets?|comes? up|goes? down|moon ?rise|moon ?set|sun ?rise|sun ?set|dark|highest|transits?|culminates?|is (?:full|new)|full moon|new moon)\b/u;
const TO_BE_TOLD = /\b(?:remind\w*|alert|notify|wake|ping|nudge|shout|before)\b/u;

/** "2" written for "to" before what is to be done: "remind me 2 cap it", "at 9 2 cap it". */
export const withSpokenTwo = (words: string): string =>
  /\b(?:remind|reminder|alarm|rmnd|remindme|ping|nudge|wake|poke|tell)\b/iu.test(words)
    ? words
        .replace(/\b(alarm|reminder) 4 (?=\d)/giu, '$1 for ')
        .replace(
          /(?<=\b(?:me|us|everyone|everybody|channel|club|(?:\d{1,2}(?:[:.]\d\d)?)?(?:am|pm)|hours?|hrs?|minutes?|mins?|tonight|tomorrow|\d{1,2}|\d{1,2}[:.]\d\d|mon|tue|wed|thu|fri|sat|sun|\w+day)) 2 (?!(?:hours?|hrs?|minutes?|mins?|days?|weeks?|nights?|stars?|am|pm|o'?clock|degrees?|deg|before|after|or|and|to|past)\b)(?=\p{L}{2})/giu,
          ' to ',
        )
    : words;

const beforeMinutes = ({ plain }: Asked): string | undefined => {
  const found = /\b(half (?:an )?hour|an hour|(\w+) ?(minutes?|mins?|hours?)) before\b/u.exec(plain);
  if (found === null) return undefined;
  const [, whole = '', count = '', unit = ''] = found;
  if (/^(?:half (?:an )?|an )hour$/u.test(whole)) return whole.startsWith('half') ? '30' : '60';
  const value = numberOf(count);
  return value === null ? undefined : String(Math.round(value * (unit.startsWith('h') ? 60 : 1)));
};

const ABOVE = /\b(?:above|over|past|reaches|gets to|higher than|at least) (\d{1,2})\b(?! ?(?:am|pm|:))/u;
/** "10 degrees high", "comes up at 10°": a height by its unit, wherever it stands. */
const HEIGHT = /\b(\d{1,2}) ?(?:°|deg\b|degrees?\b)/u;
const UP_DEG = '15';

type Condition = Readonly<Record<string, string>>;

/** What may be waited for of a target, and of the Sun and the dark. */
const OF_TARGET: readonly (readonly [RegExp, Condition])[] = [
  [
    /\b(?:clears?|clear of|over|above) (?:the |my )?(?:trees?|roofs?|houses?|horizon|hedge|wall|fence)\b/u,
    { when: 'horizon' },
  ],
  ...(['north', 'east', 'south', 'west'] as const).map(
    (side) => [new RegExp(`\\b(?:due|exactly|straight) (?:in the )?${side}\\b`, 'u'), { when: side }] as const,
  ),
  [/\b(?:meridian|transits?|highest|culminat\w*)\b/u, { when: 'transit' }],
  [/\b(?:sets|goes down|has set|is down|gone)\b/u, { when: 'set' }],
  [/\bbefore\b.*\brises?\b/u, { above: '0' }],
  [/\b(?:when|once|as soon as)\b.*\b(?:up|rises?|risen|visible|out|appears?)\b/u, { above: UP_DEG }],
];
const OF_SUN: readonly (readonly [RegExp, Condition])[] = [
  [
    /\bsun ?(?:rise|up)\b|\bdawn\b|\bsun (?:comes up|rises|is up)\b|\b(?:before|when) (?:the sun|it gets light)\b/u,
    { when: 'sunrise' },
  ],
  [/\bdark\b/u, { when: 'dark' }],
];

/** "before moonrise": the Moon at the horizon, and no height of ours. */
const MOON_TURNS: readonly (readonly [RegExp, Condition])[] = [
  [/\bmoon ?rises?\b|\bmoon (?:comes|is coming) up\b/u, { above: '0' }],
  [/\bmoon ?sets?\b/u, { when: 'set' }],
];

/** The condition in words, as options; null where an hour or the target alone is said. */
const conditionOf = (asked: Asked, target: string | undefined): Condition | null => {
  const isOfTarget = target !== undefined && target !== 'sun';
  const above = (ABOVE.exec(asked.plain) ?? HEIGHT.exec(asked.plain))?.[1];
  if (target !== undefined && above !== undefined) return { above };
  const found = (isOfTarget ? OF_TARGET : OF_SUN).find(([pattern]) => says(asked, pattern))?.[1] ?? null;
  // "when venus is up at noon": the hour was said, the height of "up" is our own.
  return found?.['above'] !== undefined && asked.when.hour !== null ? null : found;
};

/** What goes with a reminder beside what it waits for. */
const remindOptions = (asked: Asked, isSunrise: boolean): Readonly<Record<string, string | undefined>> => ({
  nights: isSunrise && says(asked, /\bevery (?:night|morning|day)\b/u) ? 'every' : undefined,
  on: asked.when.night === 'tonight' ? undefined : (asked.when.night ?? undefined),
  before: beforeMinutes(asked),
  site: asked.place ?? undefined,
  to: says(asked, /\b(?:remind|tell|alert|warn) (?:everyone|everybody|the channel|the club)\b/u)
    ? 'channel'
    : undefined,
});

/** What ends the words of a reminder: the hour or what is waited for. */
const WHEN_TOLD =
  / (?:(?:every|each) (?:mon|tue|wed|thu|fri|sat|sun|night|morning|day|evening|week)\w*|in (?:an?|half an|[\w-]+(?: five)?) (?:minutes?|mins?|hours?)|at (?:half|quarter|\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?|ten|five|twenty|one|two|three|four|six|seven|eight|nine|eleven|twelve|noon|midnight|sun)\b.*|on (?:mon|tue|wed|thu|fri|sat|sun)\w*|tonight|tomorrow\b.*|this evening|later|please|when .+|before .+|once .+|as soon as .+)$/u;
/** "to check the dew heater", "that the kids need collecting", "about the raffle": not "ten to eight", nor "to the channel". */
const CLOCK = '\\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|noon|midnight|half|quarter|an?';
const TO_DO = new RegExp(
  `\\b(?:(?:remind|tell|ping) (?:me|us|everyone|everybody) (?=its? |it's )|to (?!(?:me|us|everyone|everybody|the channel|the club|${CLOCK})\\b|\\d)|that |about (?!(?:${CLOCK})\\b|\\d))(.+)$`,
  'u',
);
const AFTER_MARK = /:\s+(\p{L}.+)$/u;

/** "weekly reminder on sundays 6pm clean the eyepieces". */
const AFTER_HOUR =
  /^(?:a )?(?:weekly|daily|nightly) (?:reminder|alarm)\b.*? (?:\d{1,2}(?:[:.]\d\d)? ?[ap]m|\d{1,2}[:.]\d\d)[:,]? (?:to )?(\p{L}.+)$/u;

/** What is to be remembered, in the words of the one who asked; the hour may stand on either side of it. */
export const toDoIn = (plain: string): string | null => {
  const named = AFTER_HOUR.exec(plain)?.[1];
  if (named !== undefined) return named;
  let words = ` ${(AFTER_MARK.exec(plain) ?? TO_DO.exec(plain))?.[1] ?? ''}`;
  for (let before = ''; before !== words;) {
    before = words;
    words = words.replace(WHEN_TOLD, '');
  }
  return /\p{L}{2}/u.test(words) ? words.trim().replace(/^its\b/u, "it's") : null;
};

/** What is to be done names no place, hour or target of the reminder's: "to bring in the washing". */
export const withoutToDo = (typed: string): string => {
  const plain = typed.toLowerCase();
  const toDo = REMIND.test(plain) ? toDoIn(plain) : null;
  const at = toDo === null || LOOKS_AT.test(toDo) ? -1 : plain.indexOf(toDo);
  return at < 0 || toDo === null ? typed : `${typed.slice(0, at)}${typed.slice(at + toDo.length)}`;
};

/** Looked at: the target is the reminder's own. */
const LOOKS_AT = /^(?:the |my )?$|^(?:look (?:at|for)|see|observe|point (?:at|to)|image|find|watch|photograph|try) /u;

export const remind: Rule = (asked) => {
  if (!says(asked, REMIND) || (says(asked, ASKS_HOUR) && !says(asked, TO_BE_TOLD))) return null;
  const toDo = toDoIn(asked.plain);
  const rest = toDo === null ? asked.plain : asked.plain.replace(toDo, '');
  const targets = asked.targets.filter((name) => rest.includes(name) || LOOKS_AT.test(toDo ?? ''));
  // "to turn the heater on": what is to be done is at no place.
  const place = asked.place !== null && toDo?.startsWith(asked.place) === true ? null : asked.place;
  return reminderOf(
    { ...asked, targets, place, plain: toDo === null || targets.length > 0 ? asked.plain : rest },
    toDo,
  );
};

/** The name alone says no more than the answer does. */
const saidOf = (toDo: string | null, target: string | undefined): string | undefined =>
  toDo === null || toDo.replace(LOOKS_AT, '').replace(/^(?:the|my) /u, '') === target ? undefined : toDo;

/** What is not done as it was asked. */
const toldBeside = (
  asked: Asked,
  { nights, to }: Readonly<Record<string, string | undefined>>,
): Pick<Reading, 'note' | 'unsure'> => ({
  ...(nights === undefined && isRepeated(asked)
    ? {
        unsure:
          'Once, not each time: an hour on days of the week repeats, such as every friday at 8pm, and the warning before sunrise; nothing else.',
      }
    : {}),
  ...(to === undefined && says(asked, /\b(?:remind|tell|alert|warn|wake|notify) us\b/u)
    ? { note: 'It comes to you alone; say “remind everyone” for the whole channel.' }
    : {}),
});

/** A night, or what is to be done, and no hour: asked for, with the rest kept. */
const atWhatHour = (night: string | null, toDo: string | null): Problem => {
  const lineAt = (hour: string): string =>
    commandLine('remind', '', { at: hour, on: night ?? undefined, say: toDo ?? undefined });
  const day = night === null ? '' : ` ${night}`;
  return problem(
    'missing-option',
    `At what hour${day === '' ? '' : `,${day}`}? Such as: remind me${/moon$/u.test(day) ? ' on the' : ''}${day} at 8pm${toDo === null || /moon$/u.test(toDo) ? '' : ` to ${toDo}`}. It comes once; ask again for the next.`,
    fittingChoices(['19:00', '21:00'].map((hour) => ({ label: `At ${hour}`, run: lineAt(hour) }))),
  );
};

const SUNSET = /\bsun ?set\b|\bsundown\b|\bsun (?:goes down|sets|has set|is down|is setting)\b/u;
const AFTER_SUNSET = /\b(?:after|past) (?:the )?(?:sun ?set|sundown|sun (?:goes down|sets|has set))\b/u;

const notSoLongAfter = (asked: Asked, say: string | undefined): Problem => {
  const { on, site } = remindOptions(asked, false);
  return problem(
    'missing-option',
    'I can remind you at sunset, before it, or when it is dark, but not so long after sunset: say the hour, such as remind me at 19:30.',
    fittingChoices([
      { label: 'At sunset', run: commandLine('remind', '', { target: 'Sun', when: 'set', on, site, say }) },
      { label: 'When it is dark', run: commandLine('remind', '', { when: 'dark', on, site, say }) },
    ]),
  );
};

/** The Sun's setting is waited for by the Sun itself; what comes so long after it has another name. */
const atSunset = (asked: Asked, say: string | undefined): Reading | Problem => {
  if (says(asked, AFTER_SUNSET) && says(asked, /\b(?:\d+|an?|half|ten|twenty|thirty|one|two) ?\w* after\b/u))
    return notSoLongAfter(asked, say);
  const options = { target: 'Sun', when: 'set', ...remindOptions(asked, false), say };
  return { line: commandLine('remind', '', options), ...toldBeside(asked, options) };
};

/** An hour of some days of the week; null: no such thing is said, or something else is waited for. */
const ofDays = (asked: Asked, toDo: string | null): Reading | Problem | null => {
  const nights = daysIn(asked);
  const isOther = asked.targets.some((name) => name !== 'sun') || conditionOf(asked, undefined) !== null;
  if (isOther || !isRepeated(asked) || isLessOften(asked) || says(asked, /\bmonth(?:ly)?\b/u)) return null;
  const { hour } = asked.when;
  if (nights === undefined || hour === null) return atWhichHour(nights, hour, toDo);
  const { on: _on, nights: _nights, ...options } = remindOptions(asked, false);
  const line = commandLine('remind', '', { at: hour, nights, ...options, say: toDo ?? undefined });
  return { line, ...toldBeside(asked, { nights, to: options['to'] }) };
};

/** The hour, or the day, is still to be said. */
const atWhichHour = (nights: string | undefined, hour: string | null, toDo: string | null): Problem => {
  const to = toDo === null ? '' : ` to ${toDo}`;
  const missing = hour === null ? 'At what hour' : 'On which day';
  const day = nights === undefined || nights === 'every' ? 'friday' : nights.split(' ')[0];
  return problem(
    'missing-option',
    `${missing}? Such as: remind me every ${day ?? 'friday'} at ${hour ?? '8pm'}${to}. It comes again each time until you cancel it.`,
    nights === undefined
      ? []
      : fittingChoices(
          ['19:00', '21:00'].map((at) => ({
            label: `At ${at}`,
            run: commandLine('remind', '', { at, nights, say: toDo ?? undefined }),
          })),
        ),
  );
};

/** A shower's best night, an eclipse of the Moon. */
/** "About the Geminids": what is to be remembered is the event itself. */
const IS_EVENT =
  /^(?:the )?(?:next |coming )?(?:\w+ )?(?:\w+ids?|(?:lunar |total )?eclipse|eclipse of the moon)(?: meteor shower| shower| meteors| peak| maximum)?$/u;
const ofEvent = (asked: Asked, toDo: string | null): Reading | null => {
  const named = toDo !== null && IS_EVENT.test(toDo) ? eventIn({ plain: toDo }) : undefined;
  const event = eventIn(asked) ?? named;
  // "Perseids" is near to the name of a cluster.
  const others = asked.targets.filter((name) => !/^(?:moon|sun)$|ids?$/u.test(name));
  if (event === undefined || others.length > 0) return null;
  const { on: _on, ...options } = remindOptions(asked, false);
  const at = /eclipse/u.test(event) ? undefined : (asked.when.hour ?? undefined);
  const line = commandLine('remind', '', { event, at, ...options });
  const isDayBefore = says(asked, /\bday before\b/u);
  return {
    line,
    ...toldBeside(asked, { nights: 'once', to: options['to'] }),
    ...(isDayBefore ? { note: 'On the day itself, not the day before: set another with its date for that.' } : {}),
  };
};

const reminderOf = (asked: Asked, toDo: string | null): Reading | Problem =>
  ofEvent(asked, toDo) ?? ofDays(asked, toDo) ?? ofOnce(asked, toDo);

const ofOnce = (asked: Asked, toDo: string | null): Reading | Problem =>
  says(asked, SUNSET) && asked.targets.every((name) => name === 'sun')
    ? atSunset(asked, toDo ?? undefined)
    : (ofPhase(asked, toDo) ?? reminderOfOther(asked, toDo));

/** "The new moon": a night, whose hour is still to be said. */
const ofPhase = (asked: Asked, toDo: string | null): Reading | Problem | null => {
  const [, phase] = /\b(new|full) moon\b/u.exec(asked.plain) ?? [];
  if (phase === undefined || asked.targets.some((name) => name !== 'moon')) return null;
  const night = `${phase} moon`;
  const say = toDo ?? undefined;
  const { hour } = asked.when;
  if (hour === null) return atWhatHour(night, toDo ?? `the ${night}`);
  const options = { ...remindOptions(asked, false), at: hour, on: night, say };
  return { line: commandLine('remind', '', options), ...toldBeside(asked, options) };
};

/** "At 4am if Saturn is up": else not at all. */
const IF_UP = /\b(?:if|provided|as long as|assuming|in case)\b.*\b(?:up|visible|risen|above|in the sky)\b/u;

const onlyIfUp = (asked: Asked, at: string | undefined, target: string | undefined): { readonly when?: string } =>
  at !== undefined && target !== undefined && says(asked, IF_UP) ? { when: 'up' } : {};

const reminderOfOther = (asked: Asked, toDo: string | null): Reading | Problem => {
  const ofMoon = MOON_TURNS.find(([pattern]) => says(asked, pattern))?.[1];
  const named = ofMoon === undefined ? asked.targets[0] : 'moon';
  const condition = ofMoon ?? conditionOf(asked, named);
  const isSunrise = condition?.['when'] === 'sunrise';
  const isOfSun = named === 'sun' && condition?.['above'] === undefined;
  const target = isSunrise || isOfSun ? undefined : named;
  const at = condition === null ? (asked.when.hour ?? undefined) : undefined;
  // What to wait for is still to be said: the command asks.
  if ([target, condition ?? undefined, at].every((part) => part === undefined))
    return asked.when.night === null && toDo === null ? { line: 'remind add' } : atWhatHour(asked.when.night, toDo);
  const options: Readonly<Record<string, string | undefined>> = {
    target,
    ...condition,
    ...onlyIfUp(asked, at, target),
    at,
    ...remindOptions(asked, isSunrise),
    say: saidOf(toDo, target),
  };
  return { line: commandLine('remind', '', options), ...toldBeside(asked, options) };
};
