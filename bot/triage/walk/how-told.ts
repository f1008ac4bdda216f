/** Lines of this guide that say how a thing is done or looked at, for one who asks: "how do i stop my phone going back to the house wifi". */
import { onceOf } from '../../ground/once.js';
import { tellingMarks } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import type { CheckEntry, FaultEntry } from '../model/schema.js';
import type { Assessment } from './walk.js';

type Lines = FaultEntry['remedy']['steps'] | CheckEntry['how'];

export interface HowTold {
  /** The step whose lines they are. */
  readonly step: string;
  readonly lines: Lines;
}

/** Of a remedy by its cause, or of a look. */
interface Guide extends HowTold {
  readonly isRemedy: boolean;
  /** Told with its cautions alone, as a step. */
  readonly needsCare: boolean;
  readonly heading: string;
  readonly marks: ReadonlyMap<string, number>;
}

interface Guides {
  readonly all: readonly Guide[];
  readonly rarity: (mark: string) => number;
}

/** A heading's words count more than those of its lines. */
const [IN_HEADING, IN_LINES] = [1.4, 1];
const BY_LENGTH = 0.25;
/** A look answers how to find out, and seldom how to do. */
const OF_A_LOOK = 0.8;

const textsOf = (lines: unknown): string => {
  if (typeof lines === 'string') return lines;
  return typeof lines === 'object' && lines !== null ? Object.values(lines).map(textsOf).join('. ') : '';
};

const guidesOf = onceOf((model: TriageModel): Guides => {
  const { lexicon } = model.reading.sayings;
  const marksOf = (heading: string, lines: Lines): ReadonlyMap<string, number> => {
    const marks = new Map<string, number>();
    for (const mark of tellingMarks(lexicon, textsOf(lines))) marks.set(mark, IN_LINES);
    for (const mark of tellingMarks(lexicon, heading)) marks.set(mark, IN_HEADING);
    return marks;
  };
  const all: readonly Guide[] = [
    ...model.faults.map(({ id, title, remedy: { steps, cautions } }) => ({
      step: id,
      isRemedy: true,
      needsCare: cautions !== undefined,
      lines: steps,
      heading: title,
      marks: marksOf(title, steps),
    })),
    ...model.checks
      .filter(({ safety }) => safety !== true)
      .map(({ id, brief, question, how }) => ({
        step: id,
        isRemedy: false,
        needsCare: false,
        lines: how,
        heading: `${question} ${brief ?? ''}`,
        marks: marksOf(`${question} ${brief ?? ''}`, how),
      })),
  ];
  const counts = new Map<string, number>();
  for (const { marks } of all) for (const mark of marks.keys()) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return { all, rarity: (mark) => Math.log((all.length + 1) / ((counts.get(mark) ?? 0) + 1)) };
});

/** What is to be done says less than with what. */
const VERB_WEIGHT = 0.25;
const VERBS = new Set(
  'stop go back mak see find turn switch do set add put get giv chang check look stay keep jump tell open off on use my myself another other <change> <switches-on> <see> <land> <move> <say>'.split(
    ' ',
  ),
);
/** Of two that tell it as well, the likelier cause's; a look counts as one so likely. */
const [BY_LIKELIHOOD, LEAST_LIKELY, LOOKS_LIKE] = [0.2, 1e-4, 0.01];
/** So much of what is asked must stand in a guide. */
const LEAST_SHARE = 0.6;
const LEAST_SCORE = 1.2;
/** Words that stand in many guides ask for none. */
const LEAST_RARE = 3.2;
/** Of this, in the lines for the member's own system, among so many of the best. */
const [IN_OWN_LINES, MOST_LOOKED_AT] = [0.5, 4];

/** Those for everyone, and for this system where it is known. */
const ownLines = (lines: Lines, system: Assessment['context']['system']): string => {
  if (typeof lines === 'string' || Array.isArray(lines) || system === null) return textsOf(lines);
  const parts = new Map(Object.entries(lines));
  return `${textsOf(parts.get('all'))}. ${textsOf(parts.get(system))}`;
};

/** Where it is done says little of what. */
const WHERE =
  /\b(?:device|task) manager\b|\b(?:in|on|at|from|with) (?:the |my |this |a )?(?:handset|hand ?set|controller|hand controller|keypad|windows|mac|linux|pc|laptop|computer|mount|scope)\b/giu;
const BAUD = /\bbaud(?: ?rate)?\b/iu;

/** @returns the lines that tell it best, of what can bear on this way to the mount; null where none does */
export const howTold = (
  model: TriageModel,
  { situation, belief, context }: Assessment,
  asked: string,
): HowTold | null => {
  const { all, rarity } = guidesOf(model);
  const { lexicon } = model.reading.sayings;
  const said = [...tellingMarks(lexicon, asked.replace(WHERE, ' ').replace(BAUD, 'speed'))];
  const worth = (mark: string): number => rarity(mark) * (VERBS.has(mark) ? VERB_WEIGHT : 1);
  const carried = said.reduce((sum, mark) => sum + worth(mark), 0);
  if (!said.some((mark) => rarity(mark) >= LEAST_RARE)) return null;
  const bears = ({ isRemedy, step }: Guide): boolean =>
    (isRemedy ? situation.faultIndex : situation.checkIndex).has(step);
  const told = all.filter(bears).flatMap((guide) => {
    const matched = said.reduce((sum, mark) => sum + (guide.marks.get(mark) ?? 0) * worth(mark), 0);
    const score = (matched / guide.marks.size ** BY_LENGTH) * (guide.isRemedy ? 1 : OF_A_LOOK);
    if (matched < LEAST_SHARE * carried || score < LEAST_SCORE) return [];
    const likely = belief.probabilities[situation.faultIndex.get(guide.step) ?? -1] ?? LOOKS_LIKE;
    return [{ guide, score: score + BY_LIKELIHOOD * Math.log(Math.max(LEAST_LIKELY, likely)) }];
  });
  const best = told
    .sort((one, other) => other.score - one.score)
    .slice(0, MOST_LOOKED_AT)
    .find(({ guide }) => {
      const own = tellingMarks(lexicon, `${guide.heading}. ${ownLines(guide.lines, context.system)}`);
      return said.reduce((sum, mark) => sum + (own.has(mark) ? worth(mark) : 0), 0) >= IN_OWN_LINES * carried;
    });
  return best === undefined || best.guide.needsCare ? null : { step: best.guide.step, lines: best.guide.lines };
};
