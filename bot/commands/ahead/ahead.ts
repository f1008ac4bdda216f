/** `ahead`: what the sky has coming for a site in the next weeks. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { darkNights } from '../../ahead/moonless.js';
import { meetingsHere, type Meeting } from '../../ahead/meetings.js';
import type { Catalogue } from '../../catalogue/index.js';
import { isProblem, type Choice } from '../../ground/problem.js';
import { reply, type Fact, type Outcome } from '../../reply/reply.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import type { Eclipse } from '../../sky/eclipses.js';
import { sunSafety } from '../../sky/sun-safety.js';
import type { UtcMs } from '../../sky/types.js';
import { localDateAt, offsetMinutes, zoneName, type Period } from '../../times/index.js';
import { commandLine, nightFor, siteNotes } from '../asking/question-parts.js';
import { siteFor } from '../asking/resolve-site.js';
import { choice, defineCommand, flag, integer, optional, text, type Deps } from '../core/command.js';
import { isAbout, MOST_OF_ONE_KIND, SHAPES, type Kind, type Question, type Section } from './ahead-question.js';
import { kindOption, ofNight, wantedOf, whichOf } from './ahead-asked.js';
import { brightest } from './brightest-section.js';
import { eclipsesSeen } from './eclipse-chosen.js';
import { eclipses, eclipsesShown, eclipseSummary } from './eclipse-section.js';
import { pairIn, pairSection } from './pair-section.js';
import { marathon } from './marathon-section.js';
import { phases } from './phase-section.js';
import { planets } from './planet-section.js';
import { afterPeriod, periodOf, spanOf, withinWords } from './ahead-span.js';
import { darkFact, darkSummary, meetingFact } from './ahead-words.js';
import { besideMoonIn, moonPairSection } from './moon-pair-section.js';
import { besideMoon } from './near-moon-words.js';
import { seasons } from './season-section.js';
import { showers } from './shower-section.js';

const MOST_MEETINGS = 3;
const MOST_SATURDAYS = 3;

const NOTHING: Section = { facts: [], data: [] };

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
    facts: kept.map((meeting) => meetingFact(meeting, zone, nowUtcMs)),
    times: kept.map(({ utcMs }) => utcMs),
    data: kept.map(({ names, utcMs, separationDeg }) => ({
      what: 'meeting',
      names: [...names],
      utc: isoUtc(utcMs),
      separationDeg: rounded(separationDeg, 2),
    })),
  };
};

/** What comes first of all that has a moment of its own; of phases or dark Saturdays alone, their line. */
const soonest = (sections: readonly Section[], later = 0): Fact | undefined => {
  const timed = sections.flatMap(({ facts, times = [] }) =>
    facts.flatMap((fact, i) => (times[i] === undefined ? [] : [{ fact, utcMs: times[i] }])),
  );
  return timed.sort((a, b) => a.utcMs - b.utcMs)[later]?.fact;
};

const nothingWords = ({ kind, about }: Question, within: string): string => {
  if (kind === 'eclipses') return `No ${about === null ? '' : 'such '}eclipse is seen from here ${within}.`;
  return about === null
    ? `Nothing of that kind ${within}.`
    : `Nothing about that ${within}. about: takes a shower, a planet, the Sun or the Moon.`;
};

const nextWords = (next: Fact | undefined): string | null =>
  next === undefined ? null : `Next: ${next.label}, ${next.value.split(/[;:] /u)[0]}.`;

/** One that comes after so many others. */
const laterWords = (later: number, within: string, sections: readonly Section[]): string => {
  const then = soonest(sections, later);
  return then === undefined
    ? `No more of them ${within}.`
    : `After ${later === 1 ? 'the next' : `${later} others`}: ${then.label}, ${then.value.split(/[;:] /u)[0]}.`;
};

/** The first thing that comes, in a line; the others stand below. */
const summaryOf = (
  question: Question,
  within: string,
  sections: readonly Section[],
  seen: readonly Eclipse[],
): string => {
  const { later = 0, kind } = question;
  return later > 0 && kind !== 'eclipses'
    ? laterWords(later, within, sections)
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
  if (['saturdays', 'showers', 'seasons', 'planets', 'messier'].includes(kind) && headline !== undefined)
    return headline;
  if (kind === 'meetings' && headline !== undefined)
    return [headline, nextWords(soonest(sections))].filter((words) => words !== null).join(' ');
  const [line] = kind === 'phases' || kind === 'saturdays' ? sections.flatMap(({ facts }) => facts) : [];
  if (line !== undefined) return `Next: ${line.value.split(/, | and /u)[0]}.`;
  const ofEclipses = kind === 'eclipses' ? eclipseSummary(seen, question) : null;
  return ofEclipses ?? nextWords(soonest(sections)) ?? nothingWords(question, within);
};

interface LookedFor {
  readonly sections: readonly Section[];
  readonly seen: readonly Eclipse[];
}

/** Of each kind that is wanted what comes in its span. */
const lookedFor = (deps: Deps, of: (one: Kind) => Question, nowUtcMs: UtcMs): LookedFor => {
  const { kind, about } = of('all');
  const wants = (one: Kind): boolean => kind === 'all' || kind === one;
  // The Moon's phases and the dark are about no shower and no planet.
  const isOfMoon = about === null || isAbout(of('phases'), 'Moon');
  const seen = wants('eclipses') ? eclipsesSeen(of('eclipses')) : [];
  return {
    seen,
    sections: [
      wants('phases') && isOfMoon ? phases(of('phases')) : NOTHING,
      wants('saturdays') && isOfMoon ? saturdays(of('saturdays')) : NOTHING,
      eclipses(eclipsesShown(seen, of('eclipses')), of('eclipses')),
      wants('showers') ? showers(of('showers')) : NOTHING,
      brightest(of('planets'), nowUtcMs),
      wants('planets') ? planets(of('planets')) : NOTHING,
      wants('meetings') ? meetings(of('meetings'), deps.catalogue, nowUtcMs) : NOTHING,
      besideMoon(of('meetings'), deps.catalogue, nowUtcMs),
      seasons(of('seasons')),
      marathon(of('messier'), deps.catalogue),
    ],
  };
};

type Given = {
  readonly about?: string | undefined;
  readonly first?: string | undefined;
  readonly site?: string | undefined;
};

const choicesOf = (kind: Kind, { about, first, site }: Given): readonly Choice[] => {
  if (first !== undefined)
    return [{ label: 'All that come, in a list', run: commandLine('ahead', 'eclipses', { about, site }) }];
  return kind === 'all'
    ? [
        { label: 'Eclipses of the next years', run: commandLine('ahead', 'eclipses', { site }) },
        { label: 'Meteor showers of the year', run: commandLine('ahead', 'showers', { site }) },
      ]
    : [];
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
      text('Eclipses of this day; meteor showers, or what is beside the Moon, in this night: friday', {
        complete: 'date',
        maxLength: 60,
      }),
    ),
    in: optional(text('Within a month or a year: december, august 2027, 2028, next year', { maxLength: 20 })),
    weeks: optional(integer('How many weeks ahead (usual: 6)', { min: 1, max: 156 })),
    best: optional(flag('Of meteor showers: say first which is the best; of Venus or Mercury: when it is brightest')),
    total: optional(flag('Of eclipses: say the next total one first')),
    shape: optional(choice('Of eclipses: say the next of this shape first', SHAPES)),
    first: optional(choice('Of eclipses: one alone, in short, or when its contacts are', ['next', 'contacts'])),
    later: optional(integer('Say first the one after the next (1), and so on', { min: 0, max: 12 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  },
  bare: 'kind',
  examples: [
    'ahead site:52.71,0.12',
    'ahead eclipses site:"Alice Springs"',
    'ahead showers weeks:20',
    'ahead showers on:tonight',
    'ahead showers in:2028 best:yes',
    'ahead meetings on:tonight',
    'ahead seasons',
    'ahead eclipses first:next shape:partial',
    'ahead meetings about:"moon and jupiter" in:december',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const where = await siteFor(deps, request, options.site);
    if (isProblem(where)) return where;
    const { observer, zone } = where.site;
    const { kind, about } = wantedOf(options);
    const night = options.on === undefined ? null : nightFor(options.on, where.site, nowUtcMs);
    if (isProblem(night)) return night;
    const period = periodOf(options.in, zone, nowUtcMs);
    if (isProblem(period)) return period;
    const told = { kind, about, weeks: options.weeks, period, night, later: options.later };
    const ofPeriod =
      (within: Period | null) =>
      (one: Kind): Question => ({
        observer,
        zone,
        kind,
        about,
        wantsBest: options.best === true,
        ...whichOf(options),
        ...ofNight(night, nowUtcMs),
        span: spanOf({ ...told, period: within }, one, nowUtcMs),
        spanSaid: period?.said ?? null,
        nowUtcMs,
      });
    const of = ofPeriod(period);
    const found = lookedFor(deps, of, nowUtcMs);
    const isBare = period !== null && kind !== 'all' && found.sections.every((section) => section.facts.length === 0);
    const later = isBare ? lookedFor(deps, ofPeriod(afterPeriod(period, kind)), nowUtcMs) : null;
    const { sections } = later ?? found;
    const summary = summaryOf(of(kind), withinWords(told), found.sections, found.seen);
    const next = later === null ? null : nextWords(soonest(later.sections));
    const facts = sections.flatMap((section) => section.facts);
    return reply({
      title: `What is coming${period === null ? '' : ` in ${period.said}`}${kind === 'all' ? '' : `: ${kind === 'messier' ? 'Messier marathon' : kind}`}`,
      summary: next === null ? summary : `${summary} ${next}`,
      facts,
      pointsAt: sections.flatMap((section) => section.pointsAt ?? []),
      notes: [
        ...sections.flatMap((section) => section.notes ?? []),
        `Times in ${zoneName(nowUtcMs, zone)}, or as the clocks go then.`,
        ...siteNotes(where),
      ],
      choices: choicesOf(kind, options),
      data: { events: sections.flatMap((section) => section.data) },
    });
  },
});
