/** The finding of `astray` as the parts of a reply: summary, facts, notes and data. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { type Observation, type PointedTarget } from '../../pointing/miss/astray-types.js';
import { shownHorizontal } from '../../pointing/miss/controller-belief.js';
import type { Explanation } from '../../pointing/miss/explain-miss.js';
import { landedOfDate } from '../../pointing/miss/landing.js';
import type { Fact, Reply } from '../../reply/reply.js';
import { compassWord, degrees, duration, hoursMinutesSeconds, listed } from '../../reply/wording.js';
import { positionAngleDeg, separationDeg, wrapHours12 } from '../../sky/angles.js';
import { siderealTimes } from '../../sky/sidereal-time.js';
import type { Equatorial, Horizontal } from '../../sky/types.js';
import { causeTitle } from './astray-words.js';
import { findingData } from './astray-data.js';
import {
  CAUSES_SAID,
  isCertain,
  isFound,
  missOf,
  nextLook,
  rivalOf,
  type Finding,
  type NextLook,
} from './astray-finding.js';
import { missChart } from './miss-chart.js';
import { leftWords, polarFacts, polarFit } from './polar-words.js';
import { correctionFor, type WordContext } from './correction-words.js';

const percent = (probability: number): string => {
  if (probability > 0.995) return 'over 99 %';
  return probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;
};

const leadWord = (probability: number): string => {
  if (probability > 0.8) return 'Most likely';
  return probability > 0.5 ? 'Probably' : 'Perhaps';
};

/** A small miss that the epochs' known shift explains is no riddle, though it is as near to right as most can read. */
const epochWords = ({ diagnosis, context, observations }: Finding): string => {
  const epoch = diagnosis.causes.find(({ parts }) => parts.length === 1 && parts[0].id === 'epoch');
  const miss = missOf(context.target, observations);
  const explains =
    epoch !== undefined && miss !== null && miss.missDeg > 0.1 && epoch.residualDeg < Math.min(0.1, miss.missDeg / 2);
  return explains
    ? ` It is just what ${causeTitle(epoch, context.circumstances)} give here: ${Math.round(epoch.predictedMissDeg * 60)}′. ${correctionFor(epoch, context)}`
    : '';
};

const summaryOf = (finding: Finding): string => {
  const { diagnosis, context } = finding;
  const first = diagnosis.causes[0]!;
  const second = rivalOf(diagnosis.causes);
  if (diagnosis.isRight)
    return `No miss to speak of: what you saw is as near to right as it can be read. Centre the target by hand and carry on.${epochWords(finding)}`;
  if (!isFound(diagnosis))
    return `What you saw fits none of the mistakes I know (of the entries, clock and alignment), as far as it could be read off. So look for a loose clutch or a slipping gear, and read it off once more; say within: where it was read less sharply.`;
  const title = causeTitle(first, context.circumstances);
  const rival =
    first.probability < 0.5 && second.probability > first.probability / 2
      ? ` But "${causeTitle(second, context.circumstances)}" is nearly as likely (${percent(second.probability)}).`
      : '';
  return `${leadWord(first.probability)} ${title} (${percent(first.probability)}). ${correctionFor(first, context)}${rival}`;
};

const missText = (from: Equatorial, to: Equatorial): string =>
  `${degrees(separationDeg(from, to), 1)} ${compassWord(positionAngleDeg(from, to))}`;
const altAzText = ({ altitudeDeg, azimuthDeg }: Horizontal): string =>
  `${degrees(altitudeDeg)}, ${Math.round(azimuthDeg) % 360}°`;

/** Of more landings than these nobody reads the predictions on a phone. */
const LANDINGS_SAID = 2;

const predictedWords = (
  { belief }: Explanation,
  circumstances: WordContext['circumstances'],
  seen: Observation,
): string => {
  switch (seen.kind) {
    case 'lst':
      return `sidereal time ${hoursMinutesSeconds(belief.lstHours)} (seen ${hoursMinutesSeconds(seen.lstHours)})`;
    case 'shown':
      return `display ${altAzText(shownHorizontal(belief, seen.target))} (seen ${altAzText(seen.at)})`;
    case 'landed':
      return `landing ${missText(seen.target.ofDate, landedOfDate(circumstances, belief, seen.target))} of ${seen.target.name} (seen ${missText(seen.target.ofDate, seen.ofDate)})`;
  }
};

/** What a cause predicts beside what was seen: "sidereal time 23h 19m 25s (seen 23h 19m 40s), landing 12.2° east (seen 15.0° east)". */
const predictedBesideSeen = (cause: Explanation, { context, observations }: Finding): string => {
  const landings = observations.filter(({ kind }) => kind === 'landed');
  const said = observations.filter((seen) => !landings.slice(LANDINGS_SAID).includes(seen));
  const unsaid = observations.length - said.length;
  return listed([
    ...said.map((seen) => predictedWords(cause, context.circumstances, seen)),
    ...(unsaid === 0 ? [] : [`${unsaid} more`]),
  ]);
};

const smallAngle = (deg: number): string => (deg < 0.3 ? `${Math.round(deg * 60)}′` : degrees(deg, 1));

const causeFact = (cause: Explanation, finding: Finding, isFirst: boolean): Fact => ({
  label: `${causeTitle(cause, finding.context.circumstances)}, ${percent(cause.probability)}`,
  value: isFirst
    ? `predicts ${predictedBesideSeen(cause, finding)}; leaves ${smallAngle(cause.residualDeg)} unexplained.`
    : `leaves ${smallAngle(cause.residualDeg)} unexplained. ${correctionFor(cause, finding.context)}`,
});

const lstFacts = ({ observations, context }: Finding): Fact[] => {
  const { utcMs, observer } = context.circumstances;
  return observations.flatMap((observation) => {
    if (observation.kind !== 'lst') return [];
    const hours = wrapHours12(observation.lstHours - siderealTimes(utcMs, observer.longitudeDeg).lastHours);
    const isOff = Math.abs(hours) >= observation.sigmaS / 1200;
    const value = isOff ? `${duration(Math.abs(hours) * MS_PER_HOUR)} ${hours > 0 ? 'ahead' : 'behind'}` : 'right';
    return [{ label: 'Sidereal time', value }];
  });
};

const ASK_AGAIN =
  'Then read off everything again, on a second target too, and ask again with also:"STAR = where it landed".';
const NO_SLEW_BY_DAY =
  'While the Sun is up, send this mount to no star: it points wrongly, and the Sun may be where it lands. Cap it, put the entries right, and try on the first star of the night.';

export interface FindingReply {
  readonly parts: Pick<Reply, 'title' | 'summary' | 'facts' | 'notes' | 'data' | 'chart'>;
  /** What the mount is to be sent to next, if anything. */
  readonly next: PointedTarget | null;
}

/** The causes that are named one by one, where one is found at all. */
const causeFacts = (finding: Finding): readonly Fact[] =>
  isFound(finding.diagnosis)
    ? finding.diagnosis.causes
        .slice(0, CAUSES_SAID)
        .filter(({ probability }, i) => i === 0 || probability > 0.02)
        .map((cause, i) => causeFact(cause, finding, i === 0))
    : [];

/** What to do to be surer, and what not to do by day. */
const adviceNotes = (finding: Finding, next: NextLook): readonly string[] => {
  const found = isFound(finding.diagnosis);
  const again = finding.isSunUp ? NO_SLEW_BY_DAY : ASK_AGAIN;
  return [
    ...(isCertain(finding) ? [] : [found ? `To be surer: ${next.text}` : again]),
    ...(finding.isSunUp && found ? [NO_SLEW_BY_DAY] : []),
  ];
};

export const findingReply = (finding: Finding, targetName: string): FindingReply => {
  const { context, observations, diagnosis } = finding;
  const { circumstances, target } = context;
  const fit = polarFit(circumstances, observations);
  const miss = missOf(target, observations);
  const next = nextLook(finding);
  const parts = {
    title:
      miss === null || diagnosis.isRight
        ? `Astray: ${targetName}`
        : `Astray: ${degrees(miss.missDeg, 1)} ${miss.towards} of ${targetName}`,
    summary: summaryOf(finding),
    facts: [
      ...lstFacts(finding),
      ...causeFacts(finding),
      ...(fit === null ? [] : polarFacts(fit, circumstances.observer.latitudeDeg < 0)),
    ],
    ...(fit === null ? {} : { chart: missChart(circumstances, observations, fit, leftWords(fit)) }),
    notes: adviceNotes(finding, next),
    data: findingData(finding, miss, fit, next),
  };
  const sendsTo =
    isCertain(finding) || !isFound(diagnosis) || next.found?.observation.kind !== 'landed'
      ? null
      : next.found.observation.target;
  return { parts, next: sendsTo };
};
