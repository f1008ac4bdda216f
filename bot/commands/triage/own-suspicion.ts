/** A cause that a member suspects and this guide does not know: kept in their words, with a test that makes sense of it. */
import { thingOf } from '../../reading/index.js';
import { keepSuspicion, OWN_SUSPICION, supposeCheck, suspicions, type WalkState } from '../../triage/index.js';
import { wordsWithin } from './fitted.js';
import type { Began } from './turn.js';

const SHOWN = 50;

const COMPUTER_PART =
  /\b(?:processors?|cpus?|arm(?:64)?|chips?|chipsets?|motherboards?|mainboards?|graphics|bios|hard ?(?:disk|drive)|laptop|computer|pc|notebook|macbook)\b/iu;
const PAST =
  /\b(?:(?:thunder)?storms?|lightning|power cut|outage|flood|fall|fell|dropped|knocked|chew(?:ed|s)?|bit(?:ten)?|mice|mouse nest|age|old age)\b/iu;
const HOUSE =
  /\b(?:wiring|house|walls?|roof|basement|building|pier|shed|ground(?:ing)?|earth(?:ing)?|mains|sockets?)\b/iu;
const ELSEWHERES =
  /\b(?:fences?|farmers?|neighbou?rs?|masts?|towers?|trams?|railway|trains?|street|lamp ?posts?|inverters?|solar|panels?|transmitters?|antennas?|radar|airport|pylons?|power lines?|substation|town|village|next door|wind ?mills?|turbines?)\b|['’]s\b/iu;

export const OTHER_COMPUTER = 'other-computer';
const TOLD_OF_ANOTHER = ' What you told of another computer is the test of it.';
const AFTER_HARM = 'another lead, adapter or computer in the place of yours, one at a time';

/** How it is tried without it. */
const testOf = (said: string): string => {
  if (ELSEWHERES.test(said)) return 'at an hour when it is off, or from another place';
  if (HOUSE.test(said)) return 'at another place, or with all on batteries';
  return 'switched off, taken away or swapped';
};

const quoted = (said: string): string => `“${wordsWithin(said, SHOWN)}”`;

/** What the words come to: the record, and what is said where the step in hand stands. */
export interface Kept {
  readonly state: WalkState;
  readonly note: string | null;
}

const UNKNOWN = 'is not among the causes I know; it goes to whoever helps, in your words.';

/** "The cat on the laptop" is no part of it. */
const isOfComputer = (said: string): boolean => COMPUTER_PART.test(thingOf(said));

/** What cannot be taken away is kept, and another computer asked for where it is the computer's; all else is tried without. */
export const withOwnSuspicion = ({ context: { by }, before }: Began, said: string, state: WalkState): Kept => {
  const wasSaid = suspicions(state.events).some((one) => one.said?.toLowerCase() === said.toLowerCase());
  if (wasSaid) return { state, note: `${quoted(said)} stands with your words for whoever helps.` };
  const kept = keepSuspicion(state, said, by);
  const look = isOfComputer(said) ? OTHER_COMPUTER : OWN_SUSPICION;
  const next = PAST.test(said) ? null : supposeCheck(before, state, look, { by, said });
  if (next !== null) return { state: next, note: null };
  const { observations } = before.evidence;
  const isTold =
    look === OTHER_COMPUTER &&
    observations.some(({ check }) => before.situation.checks[check]?.entry.id === OTHER_COMPUTER);
  const test = PAST.test(said) ? ` A test: ${AFTER_HARM}.` : '';
  return { state: kept, note: `${quoted(said)} ${UNKNOWN}${isTold ? TOLD_OF_ANOTHER : test}` };
};

/** Why that look comes. */
export const ofOwnSuspicion = (said: string): string =>
  isOfComputer(said) ? `${quoted(said)} ${UNKNOWN}` : `${quoted(said)} ${UNKNOWN} A test: ${testOf(said)}.`;
