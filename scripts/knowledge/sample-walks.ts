/** Plays walks with answers drawn as the model has them, the same draws for every policy, so that policies differ only by skill. */
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import type { Evidence } from '../../bot/triage/engine/evidence.js';
import type { Choice } from '../../bot/triage/engine/choice.js';
import { contextKey } from '../../bot/triage/model/context.js';
import type { Situation } from '../../bot/triage/engine/situation.js';
import { EMPTY, withObservation, withTry, type Policy } from './evaluate-policy.js';

export interface Played {
  readonly end: 'cured' | 'handedOn' | 'lost';
  readonly steps: number;
  readonly minutes: number;
}

/** A number in 0–1 from a text: FNV-1a, then a 32-bit finalizer; the same on every run and machine. */
export const drawFor = (text: string): number => {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) >>> 0) / 0x1_0000_0000;
};

const keyOf = (evidence: Evidence): string =>
  `${evidence.observations.map(({ check, answer, look }) => `${check}.${answer}${look === 'relook' ? '!' : ''}`).join(' ')}|${[...evidence.tried].map(([f, n]) => `${f}x${n}`).join(' ')}`;

/** Remembers what a policy chose, by what was said before; one situation a memory. */
export const remembering = (policy: Policy): Policy => {
  const chosen = new Map<string, Choice>();
  return (situation, evidence, belief) => {
    const key = keyOf(evidence);
    const known = chosen.get(key);
    if (known !== undefined) return known;
    const made = policy(situation, evidence, belief);
    chosen.set(key, made);
    return made;
  };
};

const LONGEST = 60;

/**
 * @param wrong how often an answer is wrong: a check then gives one of its other answers, and the right remedy seems to
 * change nothing (done badly, or seen wrongly). "It works" is never said by mistake: the remedy names what to see.
 */
export const playWalk = (situation: Situation, policy: Policy, truth: number, wrong: number, round: number): Played => {
  const draw = (what: string): number =>
    drawFor(`${contextKey(situation.context)} ${situation.faults[truth]?.id} ${round} ${what}`);
  let evidence = EMPTY;
  let minutes = 0;
  for (let steps = 0; steps < LONGEST; steps++) {
    const choice = policy(situation, evidence, beliefFrom(situation, evidence));
    if (choice.kind === 'handOn') return { end: 'handedOn', steps, minutes };
    if (choice.kind === 'try') {
      minutes += situation.tryMinutes[choice.fault] ?? 0;
      const times = evidence.tried.get(choice.fault) ?? 0;
      if (choice.fault === truth && draw(`try ${times}`) >= wrong) return { end: 'cured', steps: steps + 1, minutes };
      evidence = withTry(evidence, choice.fault);
      continue;
    }
    const numbers = situation.checks[choice.check];
    if (numbers === undefined) break;
    minutes += numbers.minutes;
    const look = choice.again ? 'relook' : 'look';
    let rest = draw(`${numbers.entry.id} ${look}`);
    let answer = numbers.answers.length - 1;
    for (let a = 0; a < numbers.answers.length; a++) {
      rest -= numbers.odds[a]?.[truth] ?? 0;
      if (rest < 0) {
        answer = a;
        break;
      }
    }
    if (draw(`${numbers.entry.id} ${look} slip`) < wrong) {
      answer =
        (answer + 1 + Math.floor(draw(`${numbers.entry.id} ${look} to`) * (numbers.answers.length - 1))) %
        numbers.answers.length;
    }
    evidence = withObservation(evidence, { check: choice.check, answer, look });
  }
  return { end: 'lost', steps: LONGEST, minutes };
};
