/** Which cause of the guide a member's suspicion speaks of: "the VPN", "the GPS time service", "ttl vs rs-232". */
import { onceOf } from '../../ground/once.js';
import { tellingMarks, thingOf } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import type { FaultEntry } from '../model/schema.js';
import { remediesOf } from './remedies-told.js';
import type { Assessment } from './walk.js';

/** So much of what the suspicion says, by how rare the words are, a cause's own words must hold. */
const LEAST_SHARE = 0.6;
/** What its title holds counts as much more, and what else is said beside the suspicion. */
const [IN_TITLE, BESIDE] = [0.2, 0.3];
/** Nearer than this to the best, the likelier of two causes is meant. */
const AS_GOOD = 0.08;
/** A word that stands in more remedies names one by its title alone. */
const LEAST_RARE = 2.4;
/** Less likely than this, it is named by its title or not at all. */
const LEAST_LIKELY = 0.02;
const HALF = 0.5;

const titlesOf = onceOf(
  (model: TriageModel): ReadonlyMap<string, ReadonlySet<string>> =>
    new Map(model.faults.map(({ id, title }) => [id, tellingMarks(model.reading.sayings.lexicon, title)])),
);

export interface Suspected {
  readonly fault: FaultEntry;
  /** As likely as it is by all that was told. */
  readonly probability: number;
}

/**
 * @param cause what is suspected
 * @param whole all that was said of it: "another program" with "could another program be holding the port"
 * @returns null where no cause that can bear on this walk is named
 */
export const suspectedFault = (
  model: TriageModel,
  { situation, belief }: Pick<Assessment, 'situation' | 'belief'>,
  cause: string,
  whole = cause,
): Suspected | null => {
  const { of, worth } = remediesOf(model);
  const { lexicon } = model.reading.sayings;
  const said = [...tellingMarks(lexicon, cause)];
  const besides = [...tellingMarks(lexicon, whole)].filter((mark) => !said.includes(mark));
  const shareOf = (marks: readonly string[], worthIn: (mark: string) => number): number => {
    const carried = marks.reduce((sum, mark) => sum + worth(mark), 0);
    return carried === 0 ? 0 : marks.reduce((sum, mark) => sum + Math.min(1, worthIn(mark)) * worth(mark), 0) / carried;
  };
  const head = tellingMarks(lexicon, thingOf(cause).split(' ').at(-1) ?? '');
  const isRare = said.some((mark) => worth(mark) >= LEAST_RARE);
  const told = situation.faults.flatMap((fault, f) => {
    const marks = of.get(fault.id);
    const title = titlesOf(model).get(fault.id);
    const share = shareOf(said, (mark) => marks?.get(mark) ?? 0);
    const titled = shareOf(said, (mark) => (title?.has(mark) === true ? 1 : 0));
    const probability = belief.probabilities[f] ?? 0;
    const isNamed = titled >= HALF || (isRare && probability >= LEAST_LIKELY);
    // "A mobile phone mast" is a mast.
    const isOfHead = head.size === 0 || [...head].some((mark) => marks?.has(mark) === true);
    if (share < LEAST_SHARE || !isNamed || !isOfHead) return [];
    const beside = shareOf(besides, (mark) => marks?.get(mark) ?? 0);
    return [{ fault, probability, score: share + IN_TITLE * titled + BESIDE * beside }];
  });
  const best = Math.max(...told.map(({ score }) => score));
  const [first] = told
    .filter(({ score }) => score >= best - AS_GOOD)
    .sort((one, other) => other.probability - one.probability);
  return first === undefined ? null : { fault: first.fault, probability: first.probability };
};

/** The look that shows it, or shows that its remedy has taken. */
export const lookOf = ({ remedy, verify }: FaultEntry): string | undefined => remedy.confirm ?? verify.check;

/** How likely the causes are that a look shows, by all that was told. */
export const likelyBehind = ({ situation, belief }: Pick<Assessment, 'situation' | 'belief'>, check: string): number =>
  situation.faults.reduce((sum, fault, f) => (lookOf(fault) === check ? sum + (belief.probabilities[f] ?? 0) : sum), 0);
