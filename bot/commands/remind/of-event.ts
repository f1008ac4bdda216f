/** `remind event:…`: the evening of a meteor shower's best night, or an eclipse of the Moon an hour before it begins. */
import { showersHere } from '../../ahead/showers.js';
import { MS_PER_DAY, MS_PER_HOUR } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { NOWHERE } from '../../reply/reply.js';
import { isNoticed } from '../../sky/eclipses.js';
import { twilights } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { nightAround } from '../../times/index.js';
import { eclipsesSeen } from '../ahead/eclipse-chosen.js';
import { eclipseFact, showerFact } from '../ahead/ahead-words.js';
import { hourOfNight } from '../asking/question-parts.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

export interface Event {
  readonly utcMs: UtcMs;
  readonly untilUtcMs: UtcMs;
  readonly words: string;
}

export interface EventQuestion {
  /** As typed: "Geminids", "lunar eclipse". */
  readonly event: string;
  readonly where: ResolvedSite;
  /** The hour of that evening, as typed; without one when it gets dark. */
  readonly at: string | undefined;
  readonly nowUtcMs: UtcMs;
}

const YEAR_DAYS = 365;
const ECLIPSE_YEARS = 3;

const shower = ({ event, where, at, nowUtcMs }: EventQuestion): Event | Problem | null => {
  const { site } = where;
  const name = event.replace(/^the /u, '').replace(/s$/u, '');
  const here = showersHere(site.observer, {
    startUtcMs: nowUtcMs,
    endUtcMs: nowUtcMs + YEAR_DAYS * MS_PER_DAY,
  }).find(({ bestUtcMs, shower: { name: full } }) => {
    const words = full.toLowerCase();
    return bestUtcMs > nowUtcMs && [words, words.split(' ').at(-1) ?? ''].some((each) => each.startsWith(name));
  });
  if (here === undefined) return null;
  const night = nightAround(here.bestUtcMs, site);
  const hour = at === undefined ? null : hourOfNight(at, site.zone, night);
  if (isProblem(hour)) return hour;
  const { nautical, civil } = twilights(site.observer, night.startUtcMs, night.endUtcMs);
  const duskUtcMs = nautical?.duskUtcMs ?? civil?.duskUtcMs ?? here.bestUtcMs;
  const usualUtcMs = duskUtcMs > nowUtcMs ? duskUtcMs : here.bestUtcMs;
  const { label, value } = showerFact(here, site.zone, nowUtcMs);
  return {
    utcMs: hour?.utcMs ?? usualUtcMs,
    untilUtcMs: here.bestUtcMs + MS_PER_HOUR,
    words: `The ${label} have their best, ${value}.`,
  };
};

const ofMoon = ({ where, nowUtcMs }: EventQuestion): Event | null => {
  const { observer, zone } = where.site;
  const span = { startUtcMs: nowUtcMs, endUtcMs: nowUtcMs + ECLIPSE_YEARS * YEAR_DAYS * MS_PER_DAY };
  const next = eclipsesSeen({ observer, zone, span, kind: 'eclipses', about: 'moon' }).find(
    (eclipse) => eclipse.of === 'Moon' && isNoticed(eclipse) && eclipse.span.startUtcMs - MS_PER_HOUR > nowUtcMs,
  );
  if (next === undefined) return null;
  const { label, value } = eclipseFact(next, zone, nowUtcMs);
  return {
    utcMs: next.span.startUtcMs - MS_PER_HOUR,
    untilUtcMs: next.span.endUtcMs,
    words: `${label}, ${value}.`,
  };
};

const unknown = (event: string): Problem =>
  problem(
    'unknown-event',
    `I know no such thing to wait for: "${event}". A meteor shower's best night can be (event:Geminids), or an eclipse of the Moon (event:"lunar eclipse").`,
  );

/** The Sun's eclipses are not waited for: each wants its filter and its hours read beforehand. */
const OF_SUN = problem(
  'bad-option',
  'I wait for no eclipse of the Sun: read its hours and its filter beforehand, then set a reminder for an hour, such as remind me at 9am to fit the solar filter.',
  [{ label: 'Eclipses of the Sun', run: 'ahead eclipses about:Sun' }],
);

/** When it is to be said, and what. Where it points nobody is sent. */
export const eventOf = (question: EventQuestion): (Event & { readonly pointsAt: typeof NOWHERE }) | Problem => {
  const event = question.event.trim().toLowerCase();
  const isOfMoon = /\b(?:lunar|moon)\b/u.test(event);
  if (/\beclipses?\b|\bsun\b|\bsolar\b/u.test(event) && !isOfMoon) return OF_SUN;
  const found = isOfMoon ? ofMoon(question) : shower({ ...question, event });
  if (found === null) return unknown(event);
  return isProblem(found) ? found : { ...found, pointsAt: NOWHERE };
};
