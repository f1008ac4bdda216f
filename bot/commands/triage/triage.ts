/** `triage`: walks a member, or a helper on that member's behalf, from "it does not connect" to a verified cure. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { type Outcome, type Reply } from '../../reply/reply.js';
import { StoreError } from '../../store/store.js';
import {
  answerStep,
  assess,
  startWalk,
  stepBack,
  tellText,
  UNSURE,
  type Assessment,
  type Speaker,
  type Step,
  type TriageModel,
  type WalkState,
} from '../../triage/index.js';
import { choice, defineCommand, member, optional, text, type Asker } from '../core/command.js';
import type { Deps } from '../core/deps.js';
import { readingNotes, stepReply, summaryReply, whyReply } from './triage-replies.js';
import { activeWalk, clubOutcomes, keepWalk, loadWalk, newWalkId, type Walk } from './walk-keeper.js';

const DOINGS = ['why', 'back', 'summary', 'end', 'new'] as const;
type Doing = (typeof DOINGS)[number];

const speakerOf = (walk: Walk, asker: Asker): Speaker | null =>
  walk.memberId === asker.memberId ? 'member' : walk.helperId === asker.memberId ? 'helper' : null;

const notYours = (walk: Walk): Problem =>
  problem(
    'not-your-walk',
    `Only the one whose mount it is and their helper may answer this walk. To help, write: triage for:@them, or start your own with triage do:new.${walk.endedUtcMs === null ? '' : ' It has ended.'}`,
  );

/** Whoever speaks leaves a name for "who said what". */
const named = (walk: Walk, by: Speaker, asker: Asker): Walk => {
  const name = tidy(asker.displayName, 40);
  return walk.state.names[by] === name || name === ''
    ? walk
    : { ...walk, state: { ...walk.state, names: { ...walk.state.names, [by]: name } } };
};

const gearOf = async (deps: Deps, model: TriageModel, memberId: string) => {
  try {
    const gear = await deps.store.gear.get(memberId);
    return {
      path: gear?.connection != null && model.path(gear.connection) !== undefined ? gear.connection : null,
      system: gear?.system ?? null,
    };
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return {};
  }
};

const begin = async (
  deps: Deps,
  model: TriageModel,
  asker: Asker,
  forMember: string | undefined,
  nowUtcMs: number,
): Promise<Walk> => {
  const helps = forMember !== undefined && forMember !== asker.memberId;
  const memberId = helps ? forMember : asker.memberId;
  const name = tidy(asker.displayName, 40);
  return {
    id: newWalkId(),
    clubId: asker.clubId,
    memberId,
    helperId: helps ? asker.memberId : null,
    platform: asker.platform,
    channelId: asker.channelId,
    state: startWalk(
      helps ? { member: null, helper: name } : { member: name, helper: null },
      await gearOf(deps, model, memberId),
    ),
    updatedUtcMs: nowUtcMs,
    endedUtcMs: null,
  };
};

interface Found {
  readonly walk: Walk;
  readonly isNew: boolean;
  readonly note: string | null;
}

/** The walk a line is about: the one it names, the one under way, or a new one. */
const findWalk = async (
  deps: Deps,
  model: TriageModel,
  asker: Asker,
  asked: { readonly walk?: string | undefined; readonly for?: string | undefined; readonly fresh: boolean },
  nowUtcMs: number,
): Promise<Found | Problem> => {
  if (asked.walk !== undefined) {
    const walk = await loadWalk(deps.store, asked.walk.toLowerCase());
    if (walk === null)
      return problem(
        'unknown-walk',
        `I know no walk "${tidy(asked.walk, 12)}"; walks are kept 30 days. Start a new one with: triage`,
      );
    return { walk, isNew: false, note: null };
  }
  if (!asked.fresh) {
    const about = asked.for ?? asker.memberId;
    const under = await activeWalk(deps.store, asker.clubId, about);
    if (under !== null && (asked.for === undefined || under.memberId === about)) {
      if (speakerOf(under, asker) !== null) return { walk: under, isNew: false, note: null };
      // Someone comes to help with a walk the member began.
      if (under.helperId === null)
        return {
          walk: { ...under, helperId: asker.memberId },
          isNew: false,
          note: 'You have joined as the helper; both of you may answer.',
        };
      return problem(
        'has-a-helper',
        'That member already has a helper in a walk under way. Ask them to end it first with: triage do:end',
      );
    }
  }
  return { walk: await begin(deps, model, asker, asked.for, nowUtcMs), isNew: true, note: null };
};

/** "no", "linux" or a label, for the question in hand: its answer id; undefined when it is something else. */
const plainAnswer = (model: TriageModel, step: Step, said: string): string | undefined => {
  const wanted = said.trim().toLowerCase();
  if (step.kind === 'ask' && ['not sure', 'unsure', "don't know", 'dunno', '?'].includes(wanted)) return UNSURE;
  if (step.kind === 'ask' && step.opening) {
    const known: Readonly<Record<typeof step.id, readonly string[]>> = {
      path: model.paths.map(({ id }) => id),
      system: ['windows', 'macos', 'linux'],
      client: ['direct', 'platform'],
    };
    return known[step.id].find((id) => id === wanted);
  }
  if (step.kind === 'ask')
    return step.check.answers.find(({ id, label }) => id === wanted || label.toLowerCase() === wanted)?.id;
  if (step.kind === 'try')
    return (
      {
        works: 'works',
        fixed: 'works',
        same: 'same',
        'no change': 'same',
        no: 'same',
        changed: 'changed',
        'could-not': 'could-not',
      } as Readonly<Record<string, string>>
    )[wanted];
  return undefined;
};

/** `CHECK.ANSWER` as buttons send it, or an answer alone for the step in hand. */
const splitAnswer = (model: TriageModel, said: string, step: Step): readonly [string, string] => {
  const [first = '', second] = said.trim().toLowerCase().split('.', 2);
  if (second !== undefined) return [first, second];
  return [
    step.kind === 'ask' || step.kind === 'try' ? step.id : '',
    plainAnswer(model, step, said) ?? said.trim().toLowerCase(),
  ];
};

const answerProblem = (allowed: readonly string[], walk: Walk): Problem =>
  allowed.length === 0
    ? problem(
        'unknown-answer',
        `That answers no question of this walk. See where it stands with: triage walk:${walk.id}`,
      )
    : problem('unknown-answer', `The answer must be one of: ${allowed.join(', ')}.`);

const count = async (
  deps: Deps,
  walk: Walk,
  by: Speaker,
  consent: string,
  assessment: Assessment,
  nowUtcMs: number,
): Promise<Walk | Problem> => {
  const { step } = assessment;
  if (step.kind !== 'done')
    return problem(
      'nothing-to-count',
      `Nothing has been fixed in this walk yet. See where it stands with: triage walk:${walk.id}`,
    );
  if (walk.endedUtcMs !== null) return problem('walk-ended', 'This walk has ended, and its outcome is settled.');
  if (consent !== 'yes') return { ...walk, endedUtcMs: nowUtcMs };
  if (by !== 'member') return problem('consent', 'Only the one whose mount it is can say yes to that.');
  await deps.store.outcomes.add(walk.clubId, step.id);
  return { ...walk, endedUtcMs: nowUtcMs };
};

interface Turn {
  readonly walk: Walk;
  readonly notes: readonly string[];
  readonly show: 'step' | 'why' | 'summary';
}

const takeTurn = async (
  deps: Deps,
  model: TriageModel,
  found: Found,
  by: Speaker,
  asker: Asker,
  said: { readonly text?: string | undefined; readonly answer?: string | undefined; readonly do?: Doing | undefined },
  outcomes: Readonly<Record<string, number>>,
  nowUtcMs: number,
): Promise<Turn | Problem> => {
  const walk = named(found.walk, by, asker);
  const notes = found.note === null ? [] : [found.note];
  const before = assess(model, walk.state, outcomes);
  const changed = (state: WalkState, more: readonly string[] = []): Turn => ({
    walk: { ...walk, state, endedUtcMs: null, updatedUtcMs: nowUtcMs },
    notes: [...notes, ...more],
    show: 'step',
  });
  const seen = (show: Turn['show']): Turn => ({ walk, notes, show });

  const bare = said.text?.trim().toLowerCase();
  const doing = said.do ?? DOINGS.find((word) => word === bare);
  if (doing === 'why' || doing === 'summary') return seen(doing);
  if (doing === 'end') return { walk: { ...walk, endedUtcMs: walk.endedUtcMs ?? nowUtcMs }, notes, show: 'summary' };
  if (doing === 'back') {
    const state = stepBack(walk.state);
    return state === null
      ? problem('nothing-to-take-back', 'Nothing has been said in this walk yet, so there is no step to go back.')
      : changed(state, ['Taken back one step.']);
  }
  const typed = said.answer ?? (said.text === undefined ? undefined : plainAnswer(model, before.step, said.text));
  if (typed !== undefined) {
    const [step, answer] = splitAnswer(model, typed, before.step);
    if (step === 'count') {
      const ended = await count(deps, walk, by, answer, before, nowUtcMs);
      return isProblem(ended)
        ? ended
        : {
            walk: ended,
            notes: [answer === 'yes' ? 'Counted, without your name. Clear skies.' : 'Not counted. Clear skies.'],
            show: 'summary',
          };
    }
    const state = answerStep(model, walk.state, step, answer, by);
    if ('trouble' in state) {
      return state.trouble === 'walk-too-long'
        ? problem('walk-too-long', 'This walk has grown too long. Start afresh with: triage do:new')
        : answerProblem(state.allowed, walk);
    }
    const again =
      walk.state.events.some((event) => event.kind === 'answer' && event.check === step) &&
      !(before.step.kind === 'ask' && before.step.id === step);
    return changed(state, again ? ['You have answered that before; both looks count, the second one more.'] : []);
  }
  if (said.text !== undefined && doing === undefined) {
    const told = tellText(model, walk.state, said.text, by);
    const applicable = new Set(assess(model, told.state, outcomes).situation.checkIndex.keys());
    return changed(told.state, readingNotes(model, told.read, applicable));
  }
  return seen('step');
};

const shown = (model: TriageModel, { walk, notes, show }: Turn, outcomes: Readonly<Record<string, number>>): Reply => {
  const assessment = assess(model, walk.state, outcomes);
  if (show === 'why') return whyReply(model, walk, assessment);
  if (show === 'summary' || walk.endedUtcMs !== null) {
    const made = summaryReply(model, walk, assessment);
    return { ...made, notes: [...notes, ...made.notes] };
  }
  return stepReply(model, walk, assessment, { notes });
};

export const triage = defineCommand({
  name: 'triage',
  summary: 'Find out, step by step, why the computer and the mount do not talk',
  options: {
    text: optional(
      text('What you see, in words, or pasted: an error message, a system log, a device list', { maxLength: 3900 }),
    ),
    for: optional(member('The member you are helping; both of you may answer')),
    walk: optional(text('Which walk, by its id; default: the one under way', { maxLength: 12 })),
    answer: optional(text('An answer to the question in hand', { maxLength: 80 })),
    do: optional(choice('why this step, go back a step, show the summary, end, or start a new walk', DOINGS)),
  },
  bare: 'text',
  freeText: true,
  examples: [
    'triage',
    'triage the port is not in the list',
    'triage usb 1-1: device descriptor read/64, error -71',
    'triage do:why',
  ],
  run: async (deps, { options, asker, nowUtcMs }): Promise<Outcome> => {
    const model = deps.triage();
    const bare = options.text?.trim().toLowerCase();
    const fresh = options.do === 'new' || bare === 'new';
    const found = await findWalk(deps, model, asker, { walk: options.walk, for: options.for, fresh }, nowUtcMs);
    if (isProblem(found)) return found;
    const by = speakerOf(found.walk, asker);
    if (by === null) return notYours(found.walk);
    const outcomes = await clubOutcomes(deps.store, found.walk.clubId);
    const turn = await takeTurn(
      deps,
      model,
      found,
      by,
      asker,
      fresh ? { text: bare === 'new' ? undefined : options.text } : options,
      outcomes,
      nowUtcMs,
    );
    if (isProblem(turn)) return turn;
    const kept = await keepWalk(deps.store, { ...turn.walk, updatedUtcMs: nowUtcMs });
    return shown(model, kept.trouble === null ? turn : { ...turn, notes: [...turn.notes, kept.trouble] }, outcomes);
  },
});
