/** The answer of `up`: how the target fares, what it is, when it and the dark are there, and the night as a curve. */
import { nameWithAlias } from '../../catalogue/index.js';
import type { Equipment, Sky } from '../../evening/equipment.js';
import type { Outlook } from '../../evening/outlook.js';
import { LEAST_USEFUL_ALTITUDE_DEG } from '../../evening/pick.js';
import { reply, type ChartPoint, type Fact, type NightChart, type Reply } from '../../reply/reply.js';
import { bestTime } from '../../sky/best-time.js';
import type { Twilights } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { eclipseSoon } from '../ahead/eclipse-soon.js';
import { darkWords, nightAltText, nightChart, noDarkWords, twilightSpan } from '../asking/night-words.js';
import type { TargetAtSite } from '../asking/question-parts.js';
import type { Deps } from '../core/command.js';
import type { SaidFirst } from './asked-first.js';
import type { AskedHour } from './asked-hour.js';
import { eveningBest, eveningFact } from './evening-best.js';
import { findFact } from './find-words.js';
import { atHour, notYet, type AtHour } from './hour-words.js';
import { inTheSky, moonFact } from './in-the-sky.js';
import { besideFact, bothNamed } from './beside-star.js';
import { planetShows } from './planet-shows.js';
import { dataOf } from './up-data.js';
import { upNotes } from './up-notes.js';
import { pointsAtOf } from './up-points.js';
import { variableTonight, type VariableTonight } from './variable-words.js';
import { bestAfter, showsWords, verdictWords, type Circumstances } from './verdict-words.js';
import { whatItIs } from './what-it-is.js';

export interface UpQuestion extends AskedHour {
  readonly asked: TargetAtSite;
  /** The target as the member wrote it. */
  readonly typed: string;
  readonly equipment: Equipment;
  readonly sky: Sky;
  readonly twilight: Twilights;
  readonly nowUtcMs: UtcMs;
  /** The figure that was asked for, in words. */
  readonly first: SaidFirst | null;
}

const isGood = ({ verdict }: Outlook, then: AtHour | null, { mayBeFaint }: VariableTonight): boolean =>
  verdict === 'up' && (then === null || then.isUseful) && !mayBeFaint;

const circumstancesOf = (question: UpQuestion, found: Outlook): Circumstances => {
  const { asked, equipment, sky, twilight, night } = question;
  const { target, where } = asked;
  const { observer, zone } = where.site;
  return {
    target,
    found,
    zone,
    equipment,
    sky,
    sunAlwaysUp: twilight.sunAlwaysUp,
    hasDark: twilightSpan(twilight.astronomical, night) !== null,
    topDeg: () => bestTime(target.body, observer, night).altitudeDeg,
  };
};

const chartOf = (question: UpQuestion, found: Outlook, title: string, moon: Fact | undefined): NightChart => {
  const { asked, night, twilight, nowUtcMs } = question;
  const { target, where } = asked;
  const { observer, zone } = where.site;
  const { best, times, verdict } = found;
  const around = { dark: darkWords(twilight, night, zone), moon: moon?.value ?? 'the target itself' };
  return nightChart({
    title,
    body: target.body,
    observer,
    zone,
    night,
    twilights: twilight,
    horizon: where.horizon,
    minimumAltitudeDeg: LEAST_USEFUL_ALTITUDE_DEG,
    best: best.altitudeDeg > 0 && verdict !== 'behind-horizon' && verdict !== 'past' ? best : null,
    nowUtcMs,
    altText: nightAltText(target.name, times, best, around, zone),
  });
};

interface Told {
  readonly found: Outlook;
  readonly evening: ChartPoint | null;
  readonly variable: VariableTonight;
  readonly moon: readonly Fact[];
}

/** What it is, how it shows, and when it, the dark and the Moon are there. */
const factsOf = (
  { catalogue }: Deps,
  question: UpQuestion,
  { found, evening, variable, moon }: Told,
): readonly Fact[] => {
  const { asked, night, twilight, nowUtcMs } = question;
  const { target, where } = asked;
  const { zone } = where.site;
  const shows = showsWords(circumstancesOf(question, found));
  return [
    { label: 'It is', value: whatItIs(target, found.magnitude, zone, Math.max(nowUtcMs, night.startUtcMs)) },
    ...besideFact(catalogue, target),
    ...variable.facts,
    ...(shows === null ? [] : [{ label: 'Shows', value: shows }]),
    ...planetShows(target, found, question.equipment),
    ...findFact(catalogue, target, {
      magnitude: found.magnitude,
      observer: where.site.observer,
      utcMs: found.best.utcMs,
    }),
    ...eveningFact(asked, evening),
    { label: 'In the sky', value: inTheSky(found.times, nowUtcMs, night, zone) },
    ...(target.id === 'sun' ? [] : [{ label: 'Dark', value: darkWords(twilight, night, zone) }]),
    ...moon,
  ];
};

const withSmallLetter = (words: string): string => `${words.charAt(0).toLowerCase()}${words.slice(1)}`;

/** What was asked first; the best hour after it, where that is another. */
const summaryOf = (opening: string | null, said: Circumstances, then: SaidFirst['then']): string => {
  if (opening === null) return verdictWords(said);
  if (opening === '') return bestAfter(said);
  if (then === 'nothing') return opening;
  if (then === 'verdict') return `${opening} ${withSmallLetter(verdictWords(said))}`;
  const { verdict, best } = said.found;
  const isSaid = verdict === 'up' && opening.includes(`meridian at ${formatLocalTime(best.utcMs, said.zone)}`);
  return isSaid ? opening : `${opening} ${bestAfter(said)}`;
};

const openingOf = (
  { catalogue }: Deps,
  { first, asked, typed, night, nowUtcMs }: UpQuestion,
  found: Outlook,
  then: AtHour | null,
): string | null => {
  const opening = first?.words ?? then?.words ?? notYet(asked, found, night, nowUtcMs);
  const both = bothNamed(catalogue, asked.target, typed);
  if (both === null || opening === null) return both ?? opening;
  // Whether the double star itself is split is another matter than how its neighbour stands.
  return opening === '' ? both : `${both} Of ${asked.target.name} itself: ${withSmallLetter(opening)}`;
};

export const upReply = (deps: Deps, question: UpQuestion, found: Outlook): Reply => {
  const { asked, typed, hour, night, twilight, nowUtcMs, first } = question;
  const { target, where } = asked;
  const { zone } = where.site;
  const dark = twilightSpan(twilight.astronomical, night);
  const said = circumstancesOf(question, found);
  const then = hour === null ? null : atHour(asked, found, hour.utcMs);
  const opening = openingOf(deps, question, found, then);
  const evening = eveningBest(asked, night, found, dark, nowUtcMs);
  const variable = variableTonight(target, found.best.utcMs);
  const moon = moonFact(asked, found, night);
  const title = `${nameWithAlias(target)}, night of ${night.said}`;
  const isNow = nowUtcMs >= night.startUtcMs && nowUtcMs < night.endUtcMs;
  return reply({
    title,
    level: isGood(found, then, variable) ? 'good' : 'info',
    summary: summaryOf(opening, said, first?.then),
    facts: [
      ...(target.id === 'moon' ? eclipseSoon(where.site.observer, nowUtcMs, zone).facts : []),
      ...factsOf(deps, question, { found, evening, variable, moon }),
    ],
    notes: [
      ...upNotes(typed, asked, found, noDarkWords(twilight, night, zone) === null),
      ...(hour?.notes ?? []),
      ...asked.notes,
    ],
    pointsAt: pointsAtOf(deps, asked, found, {
      nowUtcMs,
      others: [isNow ? nowUtcMs : null, hour?.utcMs ?? null, evening?.utcMs ?? null],
      events: first?.events ?? [],
    }),
    chart: chartOf(question, found, title, moon[0]),
    data: dataOf(asked, night, found, dark),
  });
};
