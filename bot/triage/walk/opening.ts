/** What a walk knows of the connection, and which of it must be asked before the next step makes sense. */
import type { Evidence } from '../engine/evidence.js';
import type { Belief } from '../engine/belief.js';
import type { Choice } from '../engine/choice.js';
import type { CheckNumbers, Situation } from '../engine/situation.js';
import { isAllThere, type WalkContext } from '../model/context.js';
import { guardsGear } from '../model/guards-gear.js';
import type { TriageModel } from '../model/model.js';
import {
  CLIENTS,
  NO_CLIENT,
  SYSTEMS,
  type CheckEntry,
  type Client,
  type FaultEntry,
  type Only,
  type PathEntry,
  type System,
} from '../model/schema.js';
import { speaksOfComputer } from '../../reading/index.js';
import { notHereIn } from './not-here.js';
import { takenBackAfter, UNSURE, type WalkEvent } from './walk-state.js';
import { tableOf } from '../../ground/table-of.js';

const OPENING_FIELDS = ['path', 'system', 'client'] as const;
/** An answer to any of them. */
export const NO_COMPUTER = 'no-computer';
export type OpeningField = (typeof OPENING_FIELDS)[number];

export interface Opening {
  readonly context: WalkContext;
  /** Fields that nobody has spoken of; "not sure" counts as spoken. */
  readonly open: ReadonlySet<OpeningField>;
  /** The paths that the member's words leave open; all of them where they say nothing. */
  readonly paths: readonly string[];
}

/** Words say a path, a system or a client this surely, or they are asked for. */
const TAKEN_FROM_WORDS = 0.55;

interface Said {
  path?: string | null;
  system?: System | null;
  client?: Client | null;
  family: readonly string[];
}

const takeFact = (said: Said, model: TriageModel, what: string, answer: string): void => {
  if (what === 'system') said.system = SYSTEMS.find((system) => system === answer) ?? said.system ?? null;
  if (what === 'client')
    said.client = ([...CLIENTS, NO_CLIENT] as const).find((client) => client === answer) ?? said.client ?? null;
  if (what !== 'path') return;
  const paths = model.path(answer) === undefined ? (model.reading.family(answer) ?? []) : [answer];
  const known = paths.filter((id) => model.path(id) !== undefined);
  // An adapter, and a cable to the hand controller: together they leave one path.
  const both = said.family.filter((id) => known.includes(id));
  const left = known.length > 1 && both.length > 0 ? both : known;
  if (left.length === 1) said.path = left[0] ?? null;
  else if (left.length > 1) said.family = left;
};

/** A phone spoken of later, where a computer is known or as one that fails too, is another than the one in hand. */
const isOtherPhone = (said: Said, facts: readonly { readonly what: string }[], isFirst: boolean): boolean =>
  said.system != null || (!isFirst && facts.some(({ what }) => what === 'works-with-phone'));

const takeTexts = (model: TriageModel, events: readonly WalkEvent[]): Said => {
  const said: Said = { family: [] };
  const takenBack = takenBackAfter(events);
  for (const [at, event] of events.entries()) {
    if (event.kind !== 'text') continue;
    const isFirst = !events.slice(0, at).some(({ kind }) => kind === 'text');
    const setsAside = isOtherPhone(said, event.facts, isFirst);
    for (const { what, answer, sureness } of event.facts)
      if (
        !(answer === 'phone' && what === 'system' && setsAside) &&
        sureness >= TAKEN_FROM_WORDS &&
        takenBack[at]?.has(what) !== true
      )
        takeFact(said, model, what, answer);
  }
  return said;
};

/** From here on what is read of a part says that the part is there. */
const NAMES_ITS_PART = 0.75;

/** The ways that have the parts of which the member's words tell something wrong: a port that is held belongs to no network bridge. */
const waysWithParts = (
  model: TriageModel,
  events: readonly WalkEvent[],
  left: readonly string[],
): readonly string[] => {
  const takenBack = takenBackAfter(events);
  const told = events.flatMap((event, at) => {
    if (event.kind === 'answer') return [{ what: event.check, answer: event.answer }];
    if (event.kind !== 'text') return [];
    return event.facts.filter(({ what, sureness }) => sureness >= NAMES_ITS_PART && takenBack[at]?.has(what) !== true);
  });
  return told.reduce((ways, { what, answer }) => {
    const check = model.check(what);
    const { paths } = check?.only ?? {};
    // What keeps gear from harm is warned of before the way is asked, and narrows nothing.
    if (check === undefined || guardsGear(check) || paths === undefined) return ways;
    if (answer === UNSURE || answer === check.good) return ways;
    const both = ways.filter((id) => paths.includes(id));
    return both.length > 0 ? both : ways;
  }, left);
};

/** An answer picked holds until it is taken back. */
const takeAnswers = (said: Said, model: TriageModel, events: readonly WalkEvent[]): void => {
  const takenBack = takenBackAfter(events);
  for (const [at, event] of events.entries()) {
    if (takenBack[at]?.has(event.kind) === true) continue;
    if (event.kind === 'path' && (event.value === null || model.path(event.value) !== undefined))
      said.path = event.value;
    if (event.kind === 'system') said.system = event.value;
    if (event.kind === 'client') said.client = event.value;
  }
};

/** What only one with a computer tells of. */
const OF_A_COMPUTER = tableOf<readonly string[] | null>({
  'how-far': ['not-seen', 'no-connect', 'search-empty', 'drops'],
  message: null,
  system: null,
  path: null,
});

/** "No computer" beside what only a computer can do is another computer than the one in hand, or none just now. */
const tellsOfComputer = (events: readonly WalkEvent[]): boolean => {
  const takenBack = takenBackAfter(events);
  const isOf = (what: string, answer: string): boolean => {
    const answers = OF_A_COMPUTER.get(what);
    return answers !== undefined && answers?.includes(answer) !== false;
  };
  return events.some((event, at) => {
    // What the member saved of the gear is not said of tonight.
    if (event.kind === 'system' || event.kind === 'path') return event.value !== null && event.by !== null;
    if (event.kind === 'answer') return event.answer !== UNSURE && isOf(event.check, event.answer);
    if (event.kind !== 'text') return false;
    if (speaksOfComputer(event.words)) return true;
    return event.facts.some(({ what, answer }) => takenBack[at]?.has(what) !== true && isOf(what, answer));
  });
};

/** The ways whose mount end the hand controller shares. */
const WAYS_OF_THE_HANDSET = 'through-controller';

/** Without a computer neither way nor system is asked, and what is looked at is what hangs on the hand controller. */
const takeNoComputer = (said: Said, model: TriageModel, events: readonly WalkEvent[]): void => {
  if (said.client !== NO_CLIENT) return;
  const isPicked = events.some((event) => event.kind === 'client' && event.value === NO_CLIENT);
  if (!isPicked && tellsOfComputer(events)) {
    delete said.client;
    return;
  }
  said.path = null;
  said.system = null;
  said.family = model.reading.family(WAYS_OF_THE_HANDSET) ?? [];
};

/** A way to the mount, or a system, that leaves but one says which. */
const takeOnlyOnes = (said: Said, path: PathEntry | undefined): void => {
  if (path?.systems.length === 1) said.system = path.systems[0] ?? null;
  if (path?.clients.length === 1) said.client = path.clients[0] ?? null;
  // A driver platform is a computer's.
  if (said.system === 'phone') said.client = 'direct';
};

const THROUGH_THE_AIR = ['network', 'radio'] as const;

/** Every way to the mount; for a phone those without a lead first. */
const waysFor = ({ paths }: TriageModel, system: Said['system']): readonly string[] => {
  const ids = (fits: (path: PathEntry) => boolean): readonly string[] => paths.filter(fits).map(({ id }) => id);
  if (system !== 'phone') return ids(() => true);
  const kindOf = ({ stages }: PathEntry): string => THROUGH_THE_AIR.find((stage) => stages.includes(stage)) ?? '';
  return [...THROUGH_THE_AIR, ''].flatMap((kind) => ids((path) => kindOf(path) === kind));
};

const COMPUTER = 'computer';

/** What is missing, a computer among it; a way that needs it is none. */
const withoutMissing = (said: Said, model: TriageModel, events: readonly WalkEvent[]): readonly string[] => {
  takeNoComputer(said, model, events);
  const lacks = notHereIn(model, events).filter((part) => part !== COMPUTER);
  if (said.path != null && !isAllThere(model.path(said.path)?.needs, { lacks })) delete said.path;
  return said.client === NO_CLIENT ? [...lacks, COMPUTER].sort() : lacks;
};

/** Answers win over what was read from words. */
export const openingOf = (model: TriageModel, events: readonly WalkEvent[]): Opening => {
  const said = takeTexts(model, events);
  takeAnswers(said, model, events);
  const lacks = withoutMissing(said, model, events);
  takeOnlyOnes(said, said.path == null ? undefined : model.path(said.path));
  const open = new Set(OPENING_FIELDS.filter((field) => said[field] === undefined));
  const every = model.paths.map(({ id }) => id);
  const isThere = (id: string): boolean => isAllThere(model.path(id)?.needs, { lacks });
  const family = said.family.filter(isThere);
  const ways = waysWithParts(model, events, family.length > 0 ? family : every.filter(isThere));
  return {
    context: {
      path: said.path ?? null,
      ...(said.path == null && ways.length < every.length ? { paths: ways } : {}),
      system: said.system ?? null,
      client: said.client ?? null,
      ...(lacks.length > 0 ? { lacks } : {}),
    },
    open,
    paths: family.length > 0 ? family : waysFor(model, said.system).filter(isThere),
  };
};

/** Answers that place the trouble behind the connection, where the way to the mount does not matter. */
const BEHIND_THE_LINK = tableOf<readonly string[]>({
  'how-far': ['no-light', 'no-move', 'elsewhere', 'guiding'],
  guiding: ['lags', 'runs-away', 'no-pulses', 'swings', 'to-and-fro', 'one-way'],
  'mount-does': ['refuses-some', 'refuses-all', 'nothing', 'one-axis', 'wrong-way', 'elsewhere', 'drifts'],
});

/** So far a mount must be got that these looks make sense: it is reached, and something is wrong behind that. */
const REACHED: readonly string[] = ['guiding', 'no-move', 'elsewhere', 'works'];

/** A look that is for mounts which are reached, and found something. */
const isFoundBehind = ({ entry }: CheckNumbers, answer: string): boolean =>
  entry.after?.check === 'how-far' &&
  entry.after.answers.every((one) => REACHED.includes(one)) &&
  answer !== entry.good;

/** The way is not asked while what every way can have, power and sky above all, is this likely. */
const OF_EVERY_WAY = 0.8;

const shareOfEveryWay = (situation: Situation, { probabilities }: Belief): number =>
  situation.faults.reduce((sum, { only }, f) => sum + (only?.paths === undefined ? (probabilities[f] ?? 0) : 0), 0);

/** Whether the way to the mount bears on what was said so far. */
export const pathMatters = (situation: Situation, { observations }: Evidence, belief: Belief): boolean => {
  const told = observations.filter(({ guessed }) => guessed !== true);
  const isBehind = observations.some(({ check, answer, guessed }) => {
    const numbers = situation.checks[check];
    const said = numbers?.answers[answer] ?? '';
    if (BEHIND_THE_LINK.get(numbers?.entry.id ?? '')?.includes(said) === true) return true;
    return numbers !== undefined && guessed !== true && isFoundBehind(numbers, said);
  });
  return !isBehind && (told.length === 0 || shareOfEveryWay(situation, belief) < OF_EVERY_WAY);
};

const bySystem = (text: unknown): boolean =>
  typeof text === 'object' && text !== null && !Array.isArray(text) && Object.keys(text).some((key) => key !== 'all');

/** Every kind of program is no limit but to those who use none. */
const limits = (only: Only | undefined, field: 'systems' | 'clients'): boolean =>
  only?.[field] !== undefined && !(field === 'clients' && CLIENTS.every((client) => only.clients?.includes(client)));

/** Causes that one system or kind of program alone can have make it worth asking for once they are this likely together. */
const WORTH_ASKING = { system: 0.35, client: 0.25 } as const;

const limitedShare = (situation: Situation, { probabilities }: Belief, field: 'systems' | 'clients'): number =>
  situation.faults.reduce((sum, { only }, f) => sum + (limits(only, field) ? (probabilities[f] ?? 0) : 0), 0);

/** Whether the lines of a check or a remedy differ by system. */
const isWordedBySystem = (check: CheckEntry | undefined, fault: FaultEntry | undefined): boolean =>
  bySystem(check?.how) || bySystem(fault?.remedy.steps);

/** The system or the kind of program, where the step in view is worded by it or much of what may be wrong depends on it. */
export const fieldFor = (
  { open }: Opening,
  situation: Situation,
  belief: Belief,
  best: Choice | undefined,
): 'system' | 'client' | null => {
  const check = best?.kind === 'ask' ? situation.checks[best.check]?.entry : undefined;
  const fault = best?.kind === 'try' ? situation.faults[best.fault] : undefined;
  const { only } = check ?? fault ?? {};
  const matters = (field: 'systems' | 'clients', worthAsking: number): boolean =>
    limits(only, field) || limitedShare(situation, belief, field) >= worthAsking;
  if (open.has('system') && (isWordedBySystem(check, fault) || matters('systems', WORTH_ASKING.system)))
    return 'system';
  return open.has('client') && matters('clients', WORTH_ASKING.client) ? 'client' : null;
};
