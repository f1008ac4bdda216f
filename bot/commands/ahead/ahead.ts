/** `ahead`: what the sky has coming for a site in the next weeks. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { darkNights } from '../../ahead/moonless.js';
import { meetingsHere, type Meeting } from '../../ahead/meetings.js';
import { isProblem } from '../../ground/problem.js';
import type { PointsAt } from '../../reply/points-at.js';
import { reply, type Fact, type Json, type Outcome } from '../../reply/reply.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import { lunarEclipses, solarEclipses, type Eclipse } from '../../sky/eclipses.js';
import { nextMoonPhase } from '../../sky/moon-phase.js';
import { MOON } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import { planetEvents } from '../../sky/planet-events.js';
import { sunSafety } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { localDateAt, offsetMinutes, zoneName } from '../../times/index.js';
import { commandLine, siteNotes } from '../asking/question-parts.js';
import { siteFor } from '../asking/resolve-site.js';
import { choice, defineCommand, integer, optional, text } from '../core/command.js';
import { isAbout, KINDS, type Kind, type Question, type Section } from './ahead-question.js';
import { darkFact, eclipseFact, meetingFact, phaseFact, planetFact } from './ahead-words.js';
import { showers } from './shower-section.js';

const WEEK_MS = 7 * MS_PER_DAY;
const USUAL_WEEKS = 6;
/** A kind asked for alone is looked for further. */
const USUAL_WEEKS_OF: Readonly<Record<Kind, number>> = {
  all: USUAL_WEEKS,
  phases: 6,
  saturdays: 13,
  eclipses: 156,
  showers: 52,
  planets: 52,
  meetings: 8,
};
const MOST_MEETINGS = 3;
const MOST_SATURDAYS = 3;
const MOST_OF_ONE_KIND = 12;
const PHASES = ['new', 'first quarter', 'full', 'last quarter'] as const;

const NOTHING: Section = { facts: [], data: [] };

const eclipsePointsAt = (
  { observer, zone }: Question,
  { of, span, greatestUtcMs, altitudeDeg }: Eclipse,
): PointsAt[] => {
  const pointed = { observer, zone, direction: of === 'Sun' ? SUN : MOON };
  if (of === 'Sun')
    return [{ ...pointed, what: 'the Sun', when: { fromUtcMs: span.startUtcMs, untilUtcMs: span.endUtcMs } }];
  return altitudeDeg > 0 ? [{ ...pointed, what: 'the Moon', when: { utcMs: greatestUtcMs } }] : [];
};

const phasesIn = ({ startUtcMs, endUtcMs }: TimeSpan): readonly { readonly name: string; readonly utcMs: UtcMs }[] => {
  const found = PHASES.flatMap((name, quarter) => {
    const times: { name: string; utcMs: UtcMs }[] = [];
    let utcMs = nextMoonPhase(quarter * 90, startUtcMs);
    while (utcMs < endUtcMs) {
      times.push({ name, utcMs });
      utcMs = nextMoonPhase(quarter * 90, utcMs + MS_PER_DAY);
    }
    return times;
  });
  return found.sort((a, b) => a.utcMs - b.utcMs).slice(0, MOST_OF_ONE_KIND);
};

const phases = ({ zone, span }: Question): Section => {
  const found = phasesIn(span);
  return {
    facts: [phaseFact(found, zone, span.startUtcMs)],
    data: found.map(({ name, utcMs }) => ({ what: 'phase', name, utc: isoUtc(utcMs) })),
  };
};

const saturdays = ({ observer, zone, span, kind }: Question): Section => {
  const nights = darkNights(observer, {
    from: localDateAt(span.startUtcMs, zone),
    days: Math.round((span.endUtcMs - span.startUtcMs) / MS_PER_DAY),
    utcOffsetMinutes: offsetMinutes(zone, span.startUtcMs),
    weekdays: [6],
    most: kind === 'all' ? MOST_SATURDAYS : MOST_OF_ONE_KIND,
  });
  return {
    facts: [darkFact(nights, zone)],
    data: nights.map(({ span: dark }) => ({
      what: 'moonless-saturday',
      startUtc: isoUtc(dark.startUtcMs),
      endUtc: isoUtc(dark.endUtcMs),
    })),
  };
};

const eclipseData = (eclipse: Eclipse): Json => ({
  what: 'eclipse',
  of: eclipse.of.toLowerCase(),
  kind: eclipse.kind,
  startUtc: isoUtc(eclipse.span.startUtcMs),
  greatestUtc: isoUtc(eclipse.greatestUtcMs),
  endUtc: isoUtc(eclipse.span.endUtcMs),
  coveredFraction: rounded(eclipse.coveredFraction, 3),
  altitudeDeg: rounded(eclipse.altitudeDeg, 2),
});

const eclipsesSeen = (question: Question): readonly Eclipse[] =>
  [
    ...solarEclipses(question.observer, question.span),
    ...lunarEclipses(question.observer, question.span).filter(({ isSeen }) => isSeen),
  ]
    .filter(({ of }) => isAbout(question, of))
    .sort((a, b) => a.greatestUtcMs - b.greatestUtcMs)
    .slice(0, MOST_OF_ONE_KIND);

const eclipses = (seen: readonly Eclipse[], question: Question): Section => ({
  pointsAt: seen.flatMap((eclipse) => eclipsePointsAt(question, eclipse)),
  facts: seen.map((eclipse) => eclipseFact(eclipse, question.zone, question.span.startUtcMs)),
  data: seen.map(eclipseData),
});

const planets = (question: Question): Section => {
  const { zone, span } = question;
  const found = planetEvents(span).filter(({ planet }) => isAbout(question, planet));
  return {
    facts: found.map((event) => planetFact(event, zone, span.startUtcMs)),
    data: found.map(({ planet, what, utcMs }) => ({ what, planet, utc: isoUtc(utcMs) })),
  };
};

/** By day, and in the hour before it, a meeting is one for those who asked for meetings. */
const isAtNight = ({ observer }: Question, { utcMs, body }: Meeting): boolean =>
  sunSafety(body, observer, utcMs).level === 'clear';

const meetings = (question: Question): Section => {
  const { observer, zone, span, kind } = question;
  const found = meetingsHere(observer, span).filter(({ names }) => isAbout(question, ...names));
  const kept =
    kind === 'all'
      ? found
          .filter((meeting) => isAtNight(question, meeting))
          .sort((a, b) => a.separationDeg - b.separationDeg)
          .slice(0, MOST_MEETINGS)
          .sort((a, b) => a.utcMs - b.utcMs)
      : found.slice(0, MOST_OF_ONE_KIND);
  return {
    pointsAt: kept.map(({ names, utcMs, body }) => ({
      what: names[1],
      when: { utcMs },
      observer,
      zone,
      direction: body,
    })),
    facts: kept.map((meeting) => meetingFact(meeting, zone, span.startUtcMs)),
    data: kept.map(({ names, utcMs, separationDeg }) => ({
      what: 'meeting',
      names: [...names],
      utc: isoUtc(utcMs),
      separationDeg: rounded(separationDeg, 2),
    })),
  };
};

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The first thing that comes, in a line; phases and dark Saturdays stand below. */
const summaryOf = ({ kind, about }: Question, weeks: number, facts: readonly Fact[]): string => {
  const within = weeks > 60 ? `${Math.round(weeks / 52)} years` : counted(weeks, 'week', 'weeks');
  const next = facts.find(({ label }) => kind !== 'all' || (label !== 'Moon' && label !== 'Moonless Saturdays'));
  if (next === undefined)
    return kind === 'eclipses'
      ? `No ${about === null ? '' : 'such '}eclipse is seen from here within ${within}.`
      : `Nothing of that kind within ${within}.`;
  if (kind === 'phases' || kind === 'saturdays') return `Next: ${next.value.split(/, | and /u)[0]}.`;
  return `Next: ${next.label}, ${next.value.split(/[;:] /u)[0]}.`;
};

export const ahead = defineCommand({
  name: 'ahead',
  summary: 'What is coming: Moon, dark Saturdays, eclipses, meteor showers, planets',
  options: {
    kind: optional(
      choice('Only one kind of event, looked for further ahead', KINDS, {
        eclipse: 'eclipses',
        shower: 'showers',
        meteors: 'showers',
        planet: 'planets',
        oppositions: 'planets',
        conjunctions: 'meetings',
        moon: 'phases',
        moonless: 'saturdays',
        weekends: 'saturdays',
      }),
    ),
    about: optional(text('Only what is about this: a shower, a planet, Sun or Moon', { maxLength: 40 })),
    weeks: optional(integer('How many weeks ahead (usual: 6)', { min: 1, max: 156 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  },
  bare: 'kind',
  examples: ['ahead site:52.71,0.12', 'ahead eclipses site:"Alice Springs"', 'ahead showers weeks:20'],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const where = await siteFor(deps, request, options.site);
    if (isProblem(where)) return where;
    const { observer, zone } = where.site;
    const kind = options.kind ?? 'all';
    const weeks = options.weeks ?? USUAL_WEEKS_OF[kind];
    const question: Question = {
      observer,
      zone,
      kind,
      about: options.about?.toLowerCase() ?? null,
      span: { startUtcMs: nowUtcMs, endUtcMs: nowUtcMs + weeks * WEEK_MS },
    };
    const wants = (one: Kind): boolean => kind === 'all' || kind === one;
    const seen = wants('eclipses') ? eclipsesSeen(question) : [];
    const sections = [
      wants('phases') ? phases(question) : NOTHING,
      wants('saturdays') ? saturdays(question) : NOTHING,
      eclipses(seen, question),
      wants('showers') ? showers(question) : NOTHING,
      wants('planets') ? planets(question) : NOTHING,
      wants('meetings') ? meetings(question) : NOTHING,
    ];
    const facts = sections.flatMap((section) => section.facts);
    return reply({
      title: kind === 'all' ? 'What is coming' : `What is coming: ${kind}`,
      summary: summaryOf(question, weeks, facts),
      facts,
      pointsAt: sections.flatMap((section) => section.pointsAt ?? []),
      notes: [
        ...sections.flatMap((section) => section.notes ?? []),
        `Times in ${zoneName(nowUtcMs, zone)}, or as the clocks go then.`,
        ...siteNotes(where),
      ],
      ...(kind === 'all'
        ? {
            choices: [
              { label: 'Eclipses of the next years', run: commandLine('ahead', 'eclipses', { site: options.site }) },
              { label: 'Meteor showers of the year', run: commandLine('ahead', 'showers', { site: options.site }) },
            ],
          }
        : {}),
      data: { events: sections.flatMap((section) => section.data) },
    });
  },
});
