/** Plays the bench's set-ups through the real command and says how each walk ended. */
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import type { TriageModel } from '../../bot/triage/index.js';
import { playWalk, type Played } from '../stories/told-player.js';
import type { Job } from './jobs.js';
import { numbersFrom } from './links/numbers.js';
import type { LinkId } from './world.js';
import { memberAt, NOISE, type Noise } from './member.js';

export interface Result {
  readonly job: Job;
  readonly end: 'cured' | 'handed on rightly' | 'handed on wrongly' | 'lost';
  readonly steps: number;
  readonly played: Played;
  /** "Run out" was said although one cause stood at this or more. */
  readonly ranOutOnKnown: boolean;
  /** Off the list: the hand-on names the right part of the chain, among two at most. */
  readonly located: boolean;
  /** Off the list: an unknown in the right part of the chain stands among the first three. */
  readonly standsThere: boolean;
  /** Questions put again at once after their answer. */
  readonly askedTwice: number;
  readonly unknownChecks: readonly string[];
}

const UNLISTED = /^(?:unexplained|unknown|unlisted)/u;
const KNOWN_FROM = 0.6;

/** Parts of the chain, as the walk's unknowns may call them, that an expert would look at for a trouble at each link. */
const PARTS: Readonly<Record<LinkId, readonly string[]>> = {
  power: ['supply', 'mount', 'power'],
  cable: ['lead', 'cable', 'computer-usb'],
  adapter: ['adapter', 'computer-usb', 'system'],
  radio: ['radio'],
  network: ['bridge', 'router', 'radio', 'computer-network', 'network'],
  'system-port': ['system', 'computer-usb', 'adapter'],
  'port-settings': ['settings'],
  'controller-mode': ['handset', 'mount', 'controller'],
  driver: ['program', 'settings', 'driver'],
  'client-program': ['program', 'settings'],
  'site-and-time': ['place'],
  alignment: ['sky', 'mount', 'place'],
};

const partsOf = ({ world }: Job): readonly string[] => PARTS[world.oddity?.link ?? 'power'];

/** By the line that a helper reads. */
const isLocated = (model: TriageModel, job: Job, { lastShown }: Played): boolean => {
  const where = /^Where: (.*)$/mu.exec(lastShown)?.[1] ?? '';
  return partsOf(job).some((part) => where.includes(model.link(part)?.title.replace(/^the /u, '') ?? '(no such part)'));
};

const standsThere = (job: Job, { standing }: Played): boolean => {
  const parts = partsOf(job);
  return standing.slice(0, 3).some(({ faultId }) => parts.some((part) => faultId === `unexplained-${part}`));
};

const twiceIn = ({ turns }: Played): number =>
  turns.filter(({ kind, id }, i) => kind === 'ask' && turns[i - 1]?.kind === 'ask' && turns[i - 1]?.id === id).length;

/** Named first among the listed causes, or its remedy was offered and could not be done. */
const namesTruth = ({ truth }: Job, { standing, turns }: Played): boolean => {
  const listed = standing.filter(({ faultId }) => !UNLISTED.test(faultId));
  return (
    truth.includes(listed[0]?.faultId ?? '') ||
    turns.some(({ kind, id, answer }) => kind === 'try' && answer === 'could-not' && truth.includes(id))
  );
};

/** What no list holds is rightly handed on where no listed cause is given out as known. */
const rightlyHandedOn = (job: Job, played: Played): boolean => {
  if (job.kind !== 'off-list') return namesTruth(job, played);
  const first = played.standing[0];
  return first === undefined || UNLISTED.test(first.faultId) || first.probability < KNOWN_FROM;
};

const endOf = (job: Job, played: Played): Result['end'] => {
  if (played.end === 'cured' || played.end === 'lost') return played.end;
  return rightlyHandedOn(job, played) ? 'handed on rightly' : 'handed on wrongly';
};

const askerFor = (seed: string, club: string): Asker => ({
  platform: 'console',
  memberId: `console:${seed.replaceAll(/[^a-z0-9]+/giu, '-')}`,
  displayName: 'Tamsin',
  clubId: `console:${club}`,
  channelId: 'console',
  isManager: false,
  isPrivate: true,
});

export interface PlayHow {
  readonly noise?: Noise;
  /** Whose counts are learned from; and whether this walk's cure joins them. */
  readonly club?: string;
  readonly counts?: boolean;
}

export const playJob = async (
  deps: Deps,
  job: Job,
  { noise = NOISE, club = 'fenwold', counts = false }: PlayHow = {},
): Promise<Result> => {
  const member = memberAt(deps.triage(), job.world, job.seed, noise);
  const { path, system, client } = job.world;
  const context: Readonly<Record<string, string>> = { path, system, client };
  const played = await playWalk(deps, askerFor(job.seed, club), {
    opening: '',
    context: (field) => context[field] ?? 'unsure',
    answers: member.answers,
    tries: member.tries,
    numbers: () => numbersFrom(member.world()),
    counts,
  });
  const listed = played.standing.filter(({ faultId }) => !UNLISTED.test(faultId));
  return {
    job,
    end: endOf(job, played),
    steps: played.steps,
    played,
    ranOutOnKnown: /run out/iu.test(played.lastShown) && (listed[0]?.probability ?? 0) >= KNOWN_FROM,
    located: isLocated(deps.triage(), job, played),
    standsThere: standsThere(job, played),
    askedTwice: twiceIn(played),
    unknownChecks: [...member.unknown],
  };
};

export const isGood = ({ end }: Result): boolean => end === 'cured' || end === 'handed on rightly';
export const within = (results: readonly Result[], steps: number): number =>
  results.filter((result) => isGood(result) && result.steps <= steps).length / Math.max(1, results.length);
