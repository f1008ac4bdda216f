/** "It drops when the laptop is on battery", at the remedy for that: said for the cause in hand, and no word that its remedy was done. */
import type { Suggestion } from '../../reading/index.js';
import type { Assessment } from '../../triage/index.js';

/** So many times likelier do the words make it. */
const PLAINLY = 8;

export const speaksForIt = ({ step }: Assessment, suggested: readonly Suggestion[]): boolean =>
  step.kind === 'try' && suggested.some(({ faultId, weight }) => faultId === step.id && weight >= PLAINLY);
