/** What `astray` found out, before it is put into words: the causes weighed, the miss itself, and what to look at next. */
import { type Observation, type PointedTarget } from '../../pointing/miss/astray-types.js';
import type { Diagnosis, Explanation } from '../../pointing/miss/explain-miss.js';
import { nextObservation } from '../../pointing/miss/next-observation.js';
import { compassWord } from '../../reply/wording.js';
import { positionAngleDeg, separationDeg } from '../../sky/angles.js';
import { causeTitle, nextWords } from './astray-words.js';
import type { WordContext } from './correction-words.js';

/** So many causes are named one by one. */
export const CAUSES_SAID = 3;
/** Beyond this nobody is sent back to the mount for another reading. */
const NEAR_CERTAIN = 0.98;

export interface Finding {
  readonly context: WordContext;
  readonly observations: readonly Observation[];
  readonly diagnosis: Diagnosis;
  /** Then a mount known to point wrongly is sent nowhere. */
  readonly isSunUp: boolean;
}

/** The likeliest cause that is not the first one with something unseen beside it. */
export const rivalOf = ([first, second, ...others]: readonly Explanation[]): Explanation => {
  const holdsFirst = ({ parts }: Explanation): boolean =>
    first!.parts.every(({ id }) => parts.some((part) => part.id === id));
  return [second!, ...others].find((cause) => !holdsFirst(cause)) ?? second!;
};

/** A cause stands before all else. */
export const isFound = ({ causes, isRight, unexplainedProbability }: Diagnosis): boolean =>
  !isRight && (causes[0]?.probability ?? 0) > unexplainedProbability;

/** Nothing more is to be learnt at the mount. */
export const isCertain = ({ diagnosis }: Finding): boolean =>
  diagnosis.isRight || (isFound(diagnosis) && diagnosis.causes[0]!.probability > NEAR_CERTAIN);

/** What the observations say without any model: the miss on the sky. */
export const missOf = (
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

export type Miss = ReturnType<typeof missOf>;

/** What tells the two likeliest causes apart: an observation to make, if one does, and the words for it. */
export interface NextLook {
  readonly found: ReturnType<typeof nextObservation>;
  readonly text: string;
}

const RIVALS_TRIED = 5;

export const nextLook = ({ context, observations, diagnosis, isSunUp }: Finding): NextLook => {
  const { circumstances, target } = context;
  const [first, ...others] = diagnosis.causes as readonly [Explanation, Explanation];
  const tells = (other: Explanation) => nextObservation(circumstances, target, observations, [first, other], !isSunUp);
  // Where nothing tells the likeliest rival from it, as of one shift under two names, the next one that something does.
  let second = rivalOf(diagnosis.causes);
  let found = tells(second);
  for (const other of others.slice(0, RIVALS_TRIED)) {
    if (found !== null) break;
    found = tells(other);
    if (found !== null) second = other;
  }
  const [a, b] = [first, second].map((cause) => causeTitle(cause, circumstances));
  const text =
    found === null
      ? `Nothing I can ask for tells "${a}" from "${b}"; check both.`
      : nextWords(found.observation, first, second, circumstances);
  return { found, text };
};
