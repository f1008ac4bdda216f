/** The finding of `astray` as the parts of a reply: summary, facts, notes and data. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { type Observation, type PointedTarget } from '../../pointing/miss/astray-types.js';
import { lstErrorS, shownHorizontal } from '../../pointing/miss/controller-belief.js';
import type { Diagnosis, Explanation } from '../../pointing/miss/explain-miss.js';
import { landedOfDate } from '../../pointing/miss/landing.js';
import { nextObservation } from '../../pointing/miss/next-observation.js';
import type { Fact, Json, Reply } from '../../reply/reply.js';
import { compassWord, degrees, duration, hoursMinutesSeconds, isoUtc, listed, rounded } from '../../reply/wording.js';
import { positionAngleDeg, separationDeg, wrapDeg180, wrapHours12 } from '../../sky/angles.js';
import { siderealTimes } from '../../sky/sidereal-time.js';
import type { Equatorial, Horizontal } from '../../sky/types.js';
import { causeTitle, nextWords } from './astray-words.js';
import { missChart } from './miss-chart.js';
import { leftWords, polarData, polarFacts, polarFit } from './polar-words.js';
import { correctionFor, type WordContext } from './correction-words.js';

const CAUSES_SAID = 3;
const CAUSES_LISTED = 8;
/** Beyond this nobody is sent back to the mount for another reading. */
const NEAR_CERTAIN = 0.98;

export interface Finding {
  readonly context: WordContext;
  readonly observations: readonly Observation[];
  readonly diagnosis: Diagnosis;
  /** Then a mount known to point wrongly is sent nowhere. */
  readonly isSunUp: boolean;
}

const percent = (probability: number): string => {
  if (probability > 0.995) return 'over 99 %';
  return probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;
};

/** The likeliest cause that is not the first one with something unseen beside it. */
const rivalOf = ([first, second, ...others]: readonly Explanation[]): Explanation => {
  const holdsFirst = ({ parts }: Explanation): boolean =>
    first!.parts.every(({ id }) => parts.some((part) => part.id === id));
  return [second!, ...others].find((cause) => !holdsFirst(cause)) ?? second!;
};

/** A cause stands before all else. */
export const isFound = ({ causes, isRight, unexplainedProbability }: Diagnosis): boolean =>
  !isRight && (causes[0]?.probability ?? 0) > unexplainedProbability;

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
    ? ` It is just what J2000 coordinates taken for those of date give here: ${Math.round(epoch.predictedMissDeg * 60)}′. ${correctionFor(epoch, context)}`
    : '';
};

const summaryOf = (finding: Finding): string => {
  const { diagnosis, context } = finding;
  const first = diagnosis.causes[0]!;
  const second = rivalOf(diagnosis.causes);
  if (diagnosis.isRight)
    return `No miss to speak of: what you saw is as near to right as it can be read. Centre the target by hand and carry on.${epochWords(finding)}`;
  if (!isFound(diagnosis))
    return `None of the mistakes I know explains what you saw (${percent(diagnosis.unexplainedProbability)}). Look for a loose clutch or a slipping gear, and check what you read off.`;
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

/** What the observations say without any model: the miss on the sky. */
const missOf = (
  target: PointedTarget,
  observations: readonly Observation[],
): { readonly missDeg: number; readonly towards: string } | null => {
  const landed = observations.find((observation) => observation.kind === 'landed' && observation.target === target);
  return landed === undefined || landed.kind !== 'landed'
    ? null
    : {
        missDeg: separationDeg(target.ofDate, landed.ofDate),
        towards: compassWord(positionAngleDeg(target.ofDate, landed.ofDate)),
      };
};

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

const predictedData = ({ belief }: Explanation, { circumstances, target }: WordContext): Json => {
  const shown = shownHorizontal(belief, target);
  const landed = landedOfDate(circumstances, belief, target);
  return {
    lstHours: rounded(((belief.lstHours % 24) + 24) % 24, 5),
    shown: { altitudeDeg: rounded(shown.altitudeDeg, 3), azimuthDeg: rounded(shown.azimuthDeg, 3) },
    landedOfDate: { raHours: rounded(landed.raHours, 5), decDeg: rounded(landed.decDeg, 4) },
  };
};

/** The amounts the contract names, for the causes that have them. */
const amountData = ({ parts, belief }: Explanation): { readonly [key: string]: Json } =>
  Object.assign(
    {},
    ...parts.map(({ id, size }) => {
      if (size === null) return id === 'sidereal-amount' ? { offsetMinutes: rounded(lstErrorS(belief) / 60, 2) } : {};
      if (id === 'sidereal-amount') return { offsetMinutes: rounded(wrapDeg180(size[0]! / 4) * 4, 2) };
      return id === 'facing' ? { offsetDeg: rounded(wrapDeg180(size[0]!), 2) } : {};
    }),
  ) as { readonly [key: string]: Json };

const causeData = (cause: Explanation, context: WordContext): { readonly [key: string]: Json } => ({
  ...(cause.parts.length === 1 ? { id: cause.parts[0].id } : { ids: cause.parts.map(({ id }) => id) }),
  probability: rounded(cause.probability, 4),
  ...amountData(cause),
  predictedMissDeg: rounded(cause.predictedMissDeg, 3),
  residualDeg: rounded(cause.residualDeg, 3),
  correction: correctionFor(cause, context),
  predicted: predictedData(cause, context),
});

/** The causes with the unknown among them, most probable first. */
const causesData = ({ diagnosis, context }: Finding): Json[] =>
  [
    ...diagnosis.causes
      .filter(({ probability }, i) => i < CAUSES_SAID || (i < CAUSES_LISTED && probability >= 0.0005))
      .map((cause) => ({ probability: cause.probability, data: causeData(cause, context) })),
    {
      probability: diagnosis.unexplainedProbability,
      data: {
        id: 'unknown',
        probability: rounded(diagnosis.unexplainedProbability, 4),
        predictedMissDeg: null,
        residualDeg: null,
        correction: 'Look for a loose clutch or a slipping gear, and check what you read off.',
      },
    },
  ]
    .sort((a, b) => b.probability - a.probability)
    .map(({ data }) => data);

const RIVALS_TRIED = 6;
const ASK_AGAIN =
  'Then read off everything again, on a second target too, and ask again with also:"STAR = where it landed".';
const NO_SLEW_BY_DAY =
  'While the Sun is up, send this mount to no star: it points wrongly, and the Sun may be where it lands. Cap it, put the entries right, and try on the first star of the night.';

export interface FindingReply {
  readonly parts: Pick<Reply, 'title' | 'summary' | 'facts' | 'notes' | 'data' | 'chart'>;
  /** What the mount is to be sent to next, if anything. */
  readonly next: PointedTarget | null;
}

export const findingReply = (finding: Finding, targetName: string): FindingReply => {
  const { context, observations, diagnosis } = finding;
  const { circumstances, target } = context;
  const first = diagnosis.causes[0]!;
  const fit = polarFit(circumstances, observations);
  const right = diagnosis.isRight;
  const found = isFound(diagnosis);
  const tells = (rival: Explanation) =>
    nextObservation(circumstances, target, observations, [first, rival], !finding.isSunUp);
  const rival = rivalOf(diagnosis.causes);
  // Where nothing tells the likeliest rival from it, as of one shift under two names, the next one that something does.
  let second = rival;
  let next = tells(rival);
  for (const other of diagnosis.causes.slice(1, RIVALS_TRIED)) {
    if (next !== null) break;
    next = tells(other);
    if (next !== null) second = other;
  }
  const [a, b] = [first, second].map((cause) => causeTitle(cause, circumstances));
  const nextText =
    next === null
      ? `Nothing I can ask for tells "${a}" from "${b}"; check both.`
      : nextWords(next.observation, first, second, circumstances);
  const miss = missOf(target, observations);
  const said = diagnosis.causes
    .slice(0, CAUSES_SAID)
    .filter(({ probability }, i) => found && (i === 0 || probability > 0.02));
  const again = finding.isSunUp ? NO_SLEW_BY_DAY : ASK_AGAIN;
  const advice = found ? `To be surer: ${nextText}` : again;
  const certain = right || (found && first.probability > NEAR_CERTAIN);
  const parts = {
    title:
      miss === null || right
        ? `Astray: ${targetName}`
        : `Astray: ${degrees(miss.missDeg, 1)} ${miss.towards} of ${targetName}`,
    summary: summaryOf(finding),
    facts: [
      ...lstFacts(finding),
      ...said.map((cause, i) => causeFact(cause, finding, i === 0)),
      ...(fit === null ? [] : polarFacts(fit, circumstances.observer.latitudeDeg < 0)),
    ],
    ...(fit === null ? {} : { chart: missChart(circumstances, observations, fit, leftWords(fit)) }),
    notes: [...(certain ? [] : [advice]), ...(finding.isSunUp && found ? [NO_SLEW_BY_DAY] : [])],
    data: {
      utc: isoUtc(circumstances.utcMs),
      mount: circumstances.mount,
      missDeg: miss === null ? null : rounded(miss.missDeg, 3),
      missDirection: miss?.towards ?? null,
      causes: causesData(finding),
      noMistakeProbability: rounded(diagnosis.noMistakeProbability, 4),
      unexplainedProbability: rounded(diagnosis.unexplainedProbability, 4),
      severalStars: fit === null ? null : polarData(fit),
      nextObservation:
        next === null
          ? null
          : {
              kind: next.observation.kind,
              target: 'target' in next.observation ? next.observation.target.name : null,
              text: nextText,
            },
    },
  };
  const sendsTo = certain || !found || next?.observation.kind !== 'landed' ? null : next.observation.target;
  return { parts, next: sendsTo };
};
