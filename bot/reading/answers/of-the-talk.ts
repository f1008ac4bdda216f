/**
 * What a member says of the talk itself rather than of the mount: that it was not understood, was asked before, was the wrong log, has to
 * wait. Judged by some thousand members' lines (scripts/reading/talk), of which a third look like it and tell of the mount.
 */
import { NOTHING } from '../examples/weights.js';
import { likelyOutcomes } from '../outcome/likely-outcome.js';
import type { Vocabulary } from '../vocabulary.js';
import { saidText } from './said-words.js';

export const TALK_KINDS = [
  'takes-back',
  'later',
  'lost',
  'repeat',
  'so-far',
  'misread',
  'why',
  'asked-before',
  'how-long',
  'idle',
] as const;
export type OfTheTalk = (typeof TALK_KINDS)[number];

const LONGEST = 140;
/** Likelier nothing of the kind, it is none. */
const MOST_NOTHING = 0.4;

/** @returns null where the words are, or may be, of the mount */
export const ofTheTalk = ({ talk, sayings }: Vocabulary, text: string): OfTheTalk | null => {
  const weights = talk();
  if (weights === null || text.length > LONGEST || text.trim().includes('\n')) return null;
  const likely = likelyOutcomes(weights, saidText(sayings.lexicon, text));
  const oddsOf = (kind: string): number => likely.get(kind) ?? 0;
  if (oddsOf(NOTHING) > MOST_NOTHING) return null;
  const best = TALK_KINDS.reduce((one, other) => (oddsOf(other) > oddsOf(one) ? other : one));
  return oddsOf(best) > oddsOf(NOTHING) ? best : null;
};
