/** One turn of a walk: what it is given, what it stands on, what comes of it. */
import { hasBegun } from './walk-words.js';
import type { Choice, Problem } from '../../ground/problem.js';
import type { FileText } from '../../pictures/read-member-file.js';
import type { Understood } from '../../reading/index.js';
import type { Reply } from '../../reply/reply.js';
import {
  turnFrom,
  type Asked,
  type Assessment,
  type Speaker,
  type Step,
  type TriageModel,
  type WalkState,
} from '../../triage/index.js';
import type { Asker, Request, Deps } from '../core/command.js';
import type { Walk } from './walk-keeper.js';

export const DOINGS = [
  'why',
  'back',
  'summary',
  'end',
  'new',
  'accept',
  'release',
  'more',
  'doubt',
  'collect',
  'entries',
] as const;
/** What shows something and changes nothing. */
export const SHOWINGS = ['why', 'summary', 'more', 'doubt', 'collect'] as const;
export type Doing = (typeof DOINGS)[number];

export interface SaidInTurn {
  readonly text?: string | undefined;
  readonly answer?: string | undefined;
  readonly do?: Doing | undefined;
  /** What stands in a file that was sent, or why it cannot be read. */
  readonly file?: FileText | Problem | undefined;
}

/** The words of a turn that is nothing but words; null beside an answer that was picked, or a file. */
export const wordsAlone = ({ text, answer, file }: SaidInTurn): string | null =>
  answer === undefined && file === undefined ? (text ?? null) : null;

export interface TurnContext {
  readonly deps: Deps;
  readonly model: TriageModel;
  readonly asker: Asker;
  readonly privacy: Request<unknown>['privacy'];
  readonly by: Speaker;
  readonly outcomes: Readonly<Record<string, number>>;
  readonly nowUtcMs: number;
}

export interface Turn {
  readonly walk: Walk;
  readonly notes: readonly string[];
  /** The question or remedy in hand when these words came. */
  readonly at?: Step;
  /** The words, where they ask how that step is done. */
  readonly asksBack?: string;
  /** The notes say how the step in hand is done: neither its lines nor its question stand once more. */
  readonly isTold?: boolean;
  /** Answers to the step in hand that must be among those shown: the one the words are nearest to, asked back, or the two that were said at once. */
  readonly first?: readonly string[] | undefined;
  /** The step was shown before: what it asks stands above. */
  readonly few?: boolean;
  /** An answer to another question that is asked back: it stands behind the step's own. */
  readonly offers?: Choice | undefined;
  /** The causes among which the member is asked what the cure was. */
  readonly whichCured?: readonly string[] | undefined;
  /** Cured by what stands in no list, as its words say. */
  readonly isCuredElse?: true;
  /** What this turn's reply asks beside its step. */
  readonly asks?: Asked | undefined;
  /** Asked outright whether the trouble is over, and the line that a yes runs. */
  readonly ifFixed?: string | undefined;
  /** `person`: the sheet for a helper, asked for before the end; `glad`: the notes alone, at a mended end. */
  readonly show: 'step' | 'person' | 'glad' | (typeof SHOWINGS)[number];
  /** Another command's answer that this turn rests on: its cautions and audience hold here too. */
  readonly rests?: Reply;
}

export interface Began {
  readonly context: TurnContext;
  readonly walk: Walk;
  readonly before: Assessment;
  readonly notes: readonly string[];
  /** These words begin the walk: nothing was asked of them. */
  readonly isOpening?: boolean;
  /** What these words tell of entries, held against the place. */
  readonly known?: readonly Understood[];
}

/** A question, a remedy or numbers stand before the member, who may be saying something to them. */
export const isAsked = ({ walk, before: { step } }: Pick<Began, 'walk' | 'before'>): boolean =>
  (step.kind === 'ask' || step.kind === 'try' || step.kind === 'numbers') && hasBegun(walk);

/** The question in hand stood before the member when these words came; an opening answers none. */
export const wasShown = ({ walk, before }: Began): boolean => before.step.kind === 'ask' && hasBegun(walk);

export const changed = ({ context, walk, notes }: Began, state: WalkState, more: Partial<Turn> = {}): Turn => ({
  show: 'step',
  ...more,
  walk: { ...walk, state: turnFrom(walk.state, state), endedUtcMs: null, updatedUtcMs: context.nowUtcMs },
  notes: [...notes, ...(more.notes ?? [])],
});
