/** How far they get, told in a sentence or two: what likeness hears of it there can be taken as said where the words are of gear. */
import { IS } from '../words/asked.js';
import type { Clause } from './clauses.js';

/** A light may be any light, and what drops may be dropped: those are left to the sayings. */
const STAGES: ReadonlySet<string> = new Set(['no-connect', 'not-seen', 'no-move', 'elsewhere']);
/** From here on 28 of 29 guesses at labelled short messages were right. */
const LIKELY_STAGE = 0.72;

const OF_GEAR = IS.mount | IS.computer | IS.program | IS.port;
const GEAR: readonly string[] = ['adapter', 'bridge', 'cable', 'handset', 'slew', 'star', 'timeout'];

const isOfGear = ({ sentence: { bits, covers }, from, to }: Clause): boolean =>
  bits.slice(from, to).some((own) => (own & OF_GEAR) !== 0) ||
  covers.slice(from, to).some((ids) => GEAR.some((id) => ids.has(id)));

/** "Goto missed Jupiter by 2 deg": a miss that is measured is reckoned with elsewhere, and has sayings of its own. */
const OF_MEASURE = /^(?:deg|degs|degrees?|arc|arcmins?|arcminutes?|arcsecs?)$/u;

const isMeasured = ({ sentence: { tokens }, from, to }: Clause): boolean =>
  tokens.slice(from, to).some(({ word }) => OF_MEASURE.test(word));

/** "It never lands in the wrong place" is like what tells that it does. */
const isDenied = ({ sentence: { bits }, from, to }: Clause): boolean =>
  bits.slice(from, to).some((own) => (own & IS.not) !== 0);

/** @param clauses those that tell it */
export const isStageInBrief = (
  check: string,
  answer: string,
  probability: number,
  clauses: readonly Clause[],
): boolean =>
  check === 'how-far' &&
  STAGES.has(answer) &&
  probability >= LIKELY_STAGE &&
  clauses.some(isOfGear) &&
  (answer !== 'elsewhere' || !clauses.some((clause) => isDenied(clause) || isMeasured(clause)));
