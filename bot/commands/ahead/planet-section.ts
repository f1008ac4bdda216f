/** Oppositions and greatest elongations, and how high an elongation has its planet in this place's twilight. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { capital, isoUtc } from '../../reply/wording.js';
import { horizontalOf } from '../../sky/place.js';
import { oppositionsAround, planetEvents, type PlanetEvent } from '../../sky/planet-events.js';
import { twilights } from '../../sky/twilight.js';
import { formatLocalDate, localDateAt, localToUtc, nightAround } from '../../times/index.js';
import { isAbout, toldFrom, type Question, type Section } from './ahead-question.js';
import { planetFact } from './ahead-words.js';

const NOON = { hour: 12, minute: 0, second: 0 } as const;
/** From noon well into the night before, or the one after. */
const ASIDE_MS = 3 * MS_PER_HOUR;

/** Height of a planet with the Sun 6° down, on the day of its elongation; null at an opposition, or where the Sun does not get there. */
const twilightAltitudeDeg = (
  { observer, zone }: Question,
  { planet, utcMs, visibility }: PlanetEvent,
): number | null => {
  if (visibility === null) return null;
  const noonUtcMs = localToUtc(localDateAt(utcMs, zone), NOON, zone).utcMs;
  const isMorning = visibility === 'morning';
  const night = nightAround(noonUtcMs + (isMorning ? -ASIDE_MS : ASIDE_MS), { zone, observer });
  const { civil } = twilights(observer, night.startUtcMs, night.endUtcMs);
  const atUtcMs = isMorning ? civil?.dawnUtcMs : civil?.duskUtcMs;
  return atUtcMs == null ? null : horizontalOf({ kind: 'solarSystem', body: planet }, observer, atUtcMs).altitudeDeg;
};

/** A planet that has none in the weeks asked of: when it was last at opposition, and when next. */
const beyondSpan = ({ about, zone, span, spanSaid, nowUtcMs = span.startUtcMs }: Question): string | null => {
  const around = about === null || (spanSaid ?? null) !== null ? null : oppositionsAround(about, nowUtcMs);
  if (around === null) return null;
  const [last, next] = [around.lastUtcMs, around.nextUtcMs].map((utcMs) => formatLocalDate(utcMs, zone));
  return `${capital(about ?? '')} was at opposition on ${last ?? ''}; the next is on ${next ?? ''}.`;
};

export const planets = (question: Question): Section => {
  const { zone, span } = question;
  const found = planetEvents(span).filter(({ planet }) => isAbout(question, planet));
  return {
    headline: found.length === 0 ? beyondSpan(question) : null,
    facts: found.map((event) => planetFact(event, twilightAltitudeDeg(question, event), zone, toldFrom(question))),
    times: found.map(({ utcMs }) => utcMs),
    data: found.map(({ planet, what, utcMs }) => ({ what, planet, utc: isoUtc(utcMs) })),
  };
};
