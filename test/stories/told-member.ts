/** The member of a story: the story's facts first, then what the bench's set-up with its causes put in would show. */
import type { TriageModel } from '../../bot/triage/index.js';
import { complaintOf, isWell } from '../bench-of-faults/chain.js';
import { broken } from '../bench-of-faults/faults.js';
import { seenAs } from '../bench-of-faults/member.js';
import { randomFrom } from '../bench-of-faults/random.js';
import { REMEDY_CHANGES } from '../bench-of-faults/remedies.js';
import { soundWorld } from '../bench-of-faults/sound-world.js';
import type { World } from '../bench-of-faults/world.js';
import type { Speaker } from './told-player.js';
import type { Cause, Story } from './told-story.js';

const stateOf = ({ any, state }: Cause): string | null => (state === undefined ? (any[0] ?? null) : state);

const worldOf = ({ id, at: [path, system, client], causes }: Story): World => {
  const sound = soundWorld(path, system, client, randomFrom(id));
  const states = causes.map(stateOf).filter((state) => state !== null);
  const odd = causes.find((cause) => stateOf(cause) === null);
  const world = broken({ ...sound, sky: { ...sound.sky, mount: 'german' } }, states);
  if (odd === undefined) return world;
  return {
    ...world,
    oddity: {
      name: id,
      link: odd.link ?? 'client-program',
      shows: odd.shows ?? 'no-reply',
      inComputer: false,
      telling: '',
    },
  };
};

export interface ToldMember {
  readonly speaker: Speaker;
  /** Checks asked that neither the story nor the bench can answer. */
  readonly unknown: ReadonlySet<string>;
  /** Causes the story has left, by index. */
  readonly left: () => readonly number[];
}

export const toldMember = (model: TriageModel, story: Story): ToldMember => {
  const start = worldOf(story);
  let world = start;
  let facts: Readonly<Record<string, string>> = story.facts;
  const gone = new Set<number>();
  const asked = new Set<string>();
  const unknown = new Set<string>();
  const allowed = (check: string, answer: string | undefined): string | undefined =>
    model.check(check)?.answers.some(({ id }) => id === answer) === true ? answer : undefined;

  const answers = (check: string): string => {
    const first = !asked.has(check);
    asked.add(check);
    const slip = allowed(check, story.slips[check]);
    if (first && slip !== undefined && gone.size === 0) return slip;
    const seen = seenAs(model, world, check);
    // A fact of the story holds until its cause is gone or a remedy has changed what the set-up itself shows.
    const fact = seen === seenAs(model, start, check) || seen === null ? allowed(check, facts[check]) : undefined;
    const answer = fact ?? allowed(check, seen ?? undefined);
    // The numbers of a miss are an invitation, not a check.
    if (answer === undefined && check !== 'numbers') unknown.add(check);
    return answer ?? 'unsure';
  };

  const cure = (fault: string): boolean => {
    const found = story.causes.findIndex((cause, i) => !gone.has(i) && cause.any.includes(fault));
    if (found < 0) return false;
    gone.add(found);
    facts = { ...facts, ...story.after[fault] };
    const state = stateOf(story.causes[found] ?? { any: [] });
    if (state === null) world = { ...world, oddity: null };
    else world = REMEDY_CHANGES[state]?.(world) ?? world;
    return true;
  };

  const tries = (fault: string): ReturnType<Speaker['tries']> => {
    if (story.cannot.includes(fault)) return 'could-not';
    const before = complaintOf(world);
    world = REMEDY_CHANGES[fault]?.(world) ?? world;
    const cured = cure(fault);
    if (gone.size === story.causes.length || isWell(world)) return 'works';
    return cured || complaintOf(world) !== before ? 'changed' : 'same';
  };

  const [path, system, client] = story.at;
  const context: Readonly<Record<string, string>> = { path, system, client };
  return {
    speaker: {
      opening: [story.opening, story.paste ?? ''].join(' ').trim(),
      context: (field) => context[field] ?? 'unsure',
      answers,
      tries,
    },
    unknown,
    left: () => story.causes.map((_, i) => i).filter((i) => !gone.has(i)),
  };
};
