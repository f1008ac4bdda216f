/** The finding of `astray` as data, with the names that the contract of `ask --json` gives. */
import { lstErrorS, shownHorizontal } from '../../pointing/miss/controller-belief.js';
import type { Explanation } from '../../pointing/miss/explain-miss.js';
import { landedOfDate } from '../../pointing/miss/landing.js';
import type { Json, Reply } from '../../reply/reply.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import { wrapDeg180 } from '../../sky/angles.js';
import { CAUSES_SAID, type Finding, type Miss, type NextLook } from './astray-finding.js';
import { correctionFor, type WordContext } from './correction-words.js';
import { polarData, type polarFit } from './polar-words.js';

const CAUSES_LISTED = 8;

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

const nextData = ({ found, text }: NextLook): Json => {
  if (found === null) return null;
  const { observation } = found;
  return { kind: observation.kind, target: 'target' in observation ? observation.target.name : null, text };
};

export const findingData = (
  finding: Finding,
  miss: Miss,
  fit: ReturnType<typeof polarFit>,
  next: NextLook,
): Reply['data'] => ({
  utc: isoUtc(finding.context.circumstances.utcMs),
  mount: finding.context.circumstances.mount,
  missDeg: miss === null ? null : rounded(miss.missDeg, 3),
  missDirection: miss?.towards ?? null,
  causes: causesData(finding),
  noMistakeProbability: rounded(finding.diagnosis.noMistakeProbability, 4),
  unexplainedProbability: rounded(finding.diagnosis.unexplainedProbability, 4),
  severalStars: fit === null ? null : polarData(fit),
  nextObservation: nextData(next),
});
