/** `ahead`: what the sky has coming for a site in the next weeks. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { darkNights } from '../../ahead/moonless.js';
import { meetingsHere, type Meeting } from '../../ahead/meetings.js';
import type { Catalogue } from '../../catalogue/index.js';
import { isProblem } from '../../ground/problem.js';
import { reply, type Fact, type Outcome } from '../../reply/reply.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import type { Eclipse } from '../../sky/eclipses.js';
import { nextMoonPhase } from '../../sky/moon-phase.js';
import type { TimeSpan } from '../../sky/night.js';
import { sunSafety } from '../../sky/sun-safety.js';
import type { UtcMs } from '../../sky/types.js';
import { localDateAt, offsetMinutes, zoneName } from '../../times/index.js';
import { commandLine, siteNotes } from '../asking/question-parts.js';
import { siteFor } from '../asking/resolve-site.js';
import { defineCommand, flag, integer, optional, text } from '../core/command.js';
import { brightest } from './brightest-section.js';
import { kindOption, ofNight, timesIn, wantedOf } from './ahead-asked.js';
import { isAbout, MOST_OF_ONE_KIND, type Kind, type Question, type Section } from './ahead-question.js';
import { eclipses, eclipsesSeen, eclipseSummary, isNoticed } from './eclipse-section.js';
import { pairIn, pairSection } from './pair-section.js';
import { planets } from './planet-section.js';
import { darkFact, darkSummary, meetingFact, phaseFact } from './ahead-words.js';
import { besideMoonIn, moonPairSection } from './moon-pair-section.js';
import { besideMoon } from './near-moon-words.js';
import { seasons } from './season-section.js';
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
  seasons: 53,
};
const MOST_MEETINGS = 3;
const MOST_SATURDAYS = 3;
const PHASES = ['new', 'first quarter', 'full', 'last quarter'] as const;

const NOTHING: Section = { facts: [], data: [] };

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
    headline: darkSummary(nights, zone),
    data: nights.map(({ span: dark }) => ({
      what: 'moonless-saturday',
      startUtc: isoUtc(dark.startUtcMs),
      endUtc: isoUtc(dark.endUtcMs),
    })),
  };
};

/** By day, and in the hour before it, a meeting is one for those who asked for meetings. */
const isAtNight = ({ observer }: Question, { utcMs, body }: Meeting): boolean =>
  sunSafety(body, observer, utcMs).level === 'clear';

const meetings = (question: Question, catalogue: Catalogue, nowUtcMs: UtcMs): Section => {
  const besideMoon = besideMoonIn(question, catalogue);
  if (besideMoon !== null) return moonPairSection(question, besideMoon, nowUtcMs);
  const pair = pairIn(question);
  if (pair !== null) return pairSection(question, pair, nowUtcMs);
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
    times: kept.map(({ utcMs }) => utcMs),
    data: kept.map(({ names, utcMs, separationDeg }) => ({
      what: 'meeting',
      names: [...names],
      utc: isoUtc(utcMs),
      separationDeg: rounded(separationDeg, 2),
    })),
  };
};

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What comes first of all that has a moment of its own; of phases or dark Saturdays alone, their line. */
const soonest = (sections: readonly Section[], later = 0): Fact | undefined => {
  const timed = sections.flatMap(({ facts, times = [] }) =>
    facts.flatMap((fact, i) => (times[i] === undefined ? [] : [{ fact, utcMs: times[i] }])),
  );
  return timed.sort((a, b) => a.utcMs - b.utcMs)[later]?.fact;
};

const nothingWords = ({ kind, about }: Question, within: string): string => {
  if (kind === 'eclipses') return `No ${about === null ? '' : 'such '}eclipse is seen from here within ${within}.`;
  return about === null
    ? `Nothing of that kind within ${within}.`
    : `Nothing about that within ${within}. about: takes a shower, a planet, the Sun or the Moon.`;
};

const nextWords = (next: Fact | undefined): string | null =>
  next === undefined ? null : `Next: ${next.label}, ${next.value.split(/[;:] /u)[0]}.`;

/** One that comes after so many others; of eclipses only those that anybody notices are counted. */
const laterWords = (
  question: Question,
  { later, within }: { readonly later: number; readonly within: string },
  sections: readonly Section[],
  seen: readonly Eclipse[],
): string => {
  const noticed = seen.filter(isNoticed).slice(later, later + 1);
  const then = question.kind === 'eclipses' ? eclipses(noticed, question).facts[0] : soonest(sections, later);
  return then === undefined
    ? `No more of them within ${within}.`
    : `After ${later === 1 ? 'the next' : `${later} others`}: ${then.label}, ${then.value.split(/[;:] /u)[0]}.`;
};

/** The first thing that comes, in a line; the others stand below. */
const summaryOf = (
  question: Question,
  { weeks, later = 0 }: { readonly weeks: number; readonly later: number | undefined },
  sections: readonly Section[],
  seen: readonly Eclipse[],
): string => {
  const within = weeks > 60 ? `${Math.round(weeks / 52)} years` : counted(weeks, 'week', 'weeks');
  return later > 0
    ? laterWords(question, { later, within }, sections, seen)
    : firstWords(question, within, sections, seen);
};

const firstWords = (
  question: Question,
  within: string,
  sections: readonly Section[],
  seen: readonly Eclipse[],
): string => {
  const { kind } = question;
  const headline = sections.map((section) => section.headline ?? null).find((words) => words !== null);
  if (['saturdays', 'showers', 'seasons', 'planets'].includes(kind) && headline !== undefined) return headline;
  if (kind === 'meetings' && headline !== undefined)
    return [headline, nextWords(soonest(sections))].filter((words) => words !== null).join(' ');
  const [line] = kind === 'phases' || kind === 'saturdays' ? sections.flatMap(({ facts }) => facts) : [];
  if (line !== undefined) return `Next: ${line.value.split(/, | and /u)[0]}.`;
  const next = soonest(sections);
  if (next === undefined) return nothingWords(question, within);
  return (kind === 'eclipses' ? eclipseSummary(seen, question) : null) ?? nextWords(next) ?? '';
};

export const ahead = defineCommand({
  name: 'ahead',
  summary: 'What is coming: Moon, dark Saturdays, eclipses, meteor showers, planets',
  options: {
    kind: optional(kindOption),
    about: optional(
      text('Only what is about this: a shower, a planet, Sun or Moon, Moon and Spica', { maxLength: 60 }),
    ),
    on: optional(
      text('Meteor showers, or what is beside the Moon, in this night: tonight, friday', {
        complete: 'date',
        maxLength: 60,
      }),
    ),
    over: optional(text('Of the Moon and a target: only in these nights: this week, december', { maxLength: 60 })),
    weeks: optional(integer('How many weeks ahead (usual: 6)', { min: 1, max: 156 })),
    best: optional(flag('Of meteor showers: say first which is the best; of Venus or Mercury: when it is brightest')),
    total: optional(flag('Of eclipses: say the next total one first')),
    later: optional(integer('Say first the one after the next (1), and so on', { min: 0, max: 12 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  },
  bare: 'kind',
  examples: [
    'ahead site:52.71,0.12',
    'ahead eclipses site:"Alice Springs"',
    'ahead showers weeks:20',
    'ahead showers on:tonight',
    'ahead meetings on:tonight',
    'ahead seasons',
    'ahead meetings about:"moon and jupiter" over:december',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const where = await siteFor(deps, request, options.site);
    if (isProblem(where)) return where;
    const { observer, zone } = where.site;
    const { kind, about } = wantedOf(options);
    const times = timesIn(options, where.site, nowUtcMs);
    if (isProblem(times)) return times;
    const { night, nights } = times;
    // What is asked for by its kind or its name is looked for as far ahead as it may be.
    const weeksOf = (one: Kind): number =>
      options.weeks ?? (about === null ? USUAL_WEEKS_OF[kind] : USUAL_WEEKS_OF[one]);
    const of = (one: Kind): Question => ({
      nights,
      observer,
      zone,
      kind,
      about,
      wantsBest: options.best === true,
      wantsTotal: options.total === true,
      ...ofNight(night, nowUtcMs),
      span: {
        startUtcMs: Math.min(nowUtcMs, (night?.startUtcMs ?? Infinity) - MS_PER_DAY),
        endUtcMs: nowUtcMs + weeksOf(one) * WEEK_MS,
      },
    });
    const wants = (one: Kind): boolean => kind === 'all' || kind === one;
    // The Moon's phases and the dark are about no shower and no planet.
    const isOfMoon = about === null || isAbout(of('phases'), 'Moon');
    const seen = wants('eclipses') ? eclipsesSeen(of('eclipses')) : [];
    const sections = [
      wants('phases') && isOfMoon ? phases(of('phases')) : NOTHING,
      wants('saturdays') && isOfMoon ? saturdays(of('saturdays')) : NOTHING,
      eclipses(seen, of('eclipses')),
      wants('showers') ? showers(of('showers')) : NOTHING,
      brightest(of('planets'), nowUtcMs),
      wants('planets') ? planets(of('planets')) : NOTHING,
      wants('meetings') ? meetings(of('meetings'), deps.catalogue, nowUtcMs) : NOTHING,
      besideMoon(of('meetings'), deps.catalogue, nowUtcMs),
      seasons(of('seasons')),
    ];
    const facts = sections.flatMap((section) => section.facts);
    return reply({
      title: kind === 'all' ? 'What is coming' : `What is coming: ${kind}`,
      summary: summaryOf(of(kind), { weeks: weeksOf(kind), later: options.later }, sections, seen),
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
