/**
 * Which looks can bear at all: once an answer shows that the signal stops at a stage, what lies beyond it cannot be seen
 * working or failing, whatever it is. A ping without a reply leaves the hand controller's screen out of it.
 */
import type { Belief } from './belief.js';
import type { Evidence } from './evidence.js';
import type { CheckNumbers, Situation } from './situation.js';

/** So likely must the cause lie at the stage where the signal stops, or before it, for what is beyond to be left alone. */
const STOPS_THERE = 0.5;

/** How likely the cause lies at this place of the chain or before it. */
const upTo = ({ positions }: Situation, { probabilities }: Belief, place: number): number =>
  probabilities.reduce((sum, p, h) => sum + ((positions[h] ?? 0) <= place ? p : 0), 0);

/** The earliest place of the chain at which an answer shows that the signal stops; Infinity where none does. */
export const whereItStops = (situation: Situation, evidence: Evidence, belief: Belief): number =>
  evidence.observations.reduce((earliest, { check, answer }) => {
    const numbers = situation.checks[check];
    const stage = numbers?.entry.stops?.[numbers.answers[answer] ?? ''];
    const place = stage === undefined ? Infinity : situation.stagePosition(stage);
    if (place >= Math.min(earliest, situation.stageCount)) return earliest;
    return upTo(situation, belief, place) >= STOPS_THERE ? place : earliest;
  }, Infinity);

/** So likely must the cause lie at a place or before it for what is beyond to wait until somebody has looked whether the signal passes. */
const MAY_STOP_THERE = 0.25;

/**
 * The earliest place at which an open look of the bare link (a ping, a port that opens) may still show that the signal stops;
 * Infinity where none is left. What lies beyond waits for it: settings that fit behind a network that may not stand tell nothing.
 */
export const whereToLookFirst = (situation: Situation, belief: Belief, open: (check: number) => boolean): number =>
  situation.checks.reduce((earliest, { entry }, check) => {
    if (entry.linkFirst !== true || !open(check)) return earliest;
    return Object.values(entry.stops ?? {}).reduce((least, stage) => {
      const place = situation.stagePosition(stage);
      return place < Math.min(least, situation.stageCount) && upTo(situation, belief, place) >= MAY_STOP_THERE
        ? place
        : least;
    }, earliest);
  }, Infinity);

/** Whether a check looks no further than the signal comes. History and contrasts bear wherever it stops. */
export const isReached = (situation: Situation, { entry }: CheckNumbers, stop: number): boolean =>
  entry.lasting === true || entry.safety === true || situation.stagePosition(entry.reach ?? entry.stage) <= stop;
