/** The member who stands at the set-up: sees what the rules say, and now and then misreads, does not know, or says "fine" too soon. */
import type { TriageModel } from '../../bot/triage/index.js';
import { complaintOf, howFarOf, isWell, type HowFar } from './chain.js';
import { ADAPTER_RULES, PORT_RULES } from './links/adapter-and-port.js';
import { CONTROLLER_RULES, DRIVER_RULES, OVERVIEW_RULES, PROGRAM_RULES } from './links/controller-and-program.js';
import { contrastRules } from './links/contrasts.js';
import { HISTORY_RULES } from './links/history.js';
import { HIDDEN_RULES } from './links/holding-and-hidden.js';
import { LEAD_RULES, POWER_RULES } from './links/power-and-leads.js';
import { NETWORK_RULES, RADIO_RULES } from './links/radio-and-network.js';
import { SKY_RULES } from './links/sky.js';
import { randomFrom, type Random } from './random.js';
import { BEYOND_REPAIR, CANNOT_TONIGHT, REMEDY_CHANGES } from './remedies.js';
import type { Oddity, World } from './world.js';

const LOOKS: Readonly<Record<string, (w: World) => string>> = {
  ...POWER_RULES,
  ...LEAD_RULES,
  ...ADAPTER_RULES,
  ...RADIO_RULES,
  ...NETWORK_RULES,
  ...PORT_RULES,
  ...CONTROLLER_RULES,
  ...DRIVER_RULES,
  ...PROGRAM_RULES,
  ...SKY_RULES,
  ...OVERVIEW_RULES,
  ...HIDDEN_RULES,
  ...HISTORY_RULES,
};

export const RULES: Readonly<Record<string, (w: World) => string>> = { ...LOOKS, ...contrastRules(LOOKS) };

/** How members err. Judgement, no source: shares a helper would recognise; all in this one place. */
export const NOISE = {
  /** Cannot tell, whatever is asked. */
  unsure: 0.05,
  /** Reads or presses another answer than what stands there. */
  misread: 0.03,
  /** Says "fine" of a setting, entry or plug that is not, where the look asks for a judgement. */
  tooSoonFine: 0.08,
  /** Says the same again when asked once more, after a slip. */
  keepsToIt: 0.6,
  /** Does a remedy in a way that does nothing. */
  doneWrongly: 0.06,
  /** Cannot do a remedy for a reason of their own. */
  couldNot: 0.03,
} as const;

export const NO_NOISE: Noise = { unsure: 0, misread: 0, tooSoonFine: 0, keepsToIt: 0, doneWrongly: 0, couldNot: 0 };
export type Noise = { readonly [K in keyof typeof NOISE]: number };

/** Looks that ask for a judgement about one's own work, where people are quick to say "fine". */
const JUDGED: ReadonlySet<string> = new Set([
  'power-walk',
  'settings-screen',
  'network-doubts',
  'start-doubts',
  'entries-screen',
  'site-entries',
  'zone-entries',
  'date-entries',
  'program-clock',
  'epoch-entries',
  'serial-lead',
  'wire-order',
  'usb-plugs',
  'controller-lead',
  'port-match',
  'bridge-entry',
  'mount-type',
  'supply-amps',
  'firewall',
  'home-start',
  'star-sure',
  'polar-axis',
  'balance',
  'feet',
  'old-points',
  'tube-firm',
  'guider-running',
  'wireless-saving',
]);

/** What a mount does under the program, which nobody sees of one that does not come so far. */
const DOINGS: ReadonlySet<string> = new Set([
  'how-far',
  'mount-does',
  'miss',
  'miss-shape',
  'follow',
  'slew',
  'refused-where',
  'when-drops',
  'guiding',
  'guide-buttons',
]);

const COURSE: readonly HowFar[] = ['no-light', 'not-seen', 'no-connect', 'drops', 'no-move', 'elsewhere', 'works'];

const STOPS_AT: Readonly<Record<Oddity['shows'], HowFar>> = {
  dark: 'no-light',
  'not-seen': 'not-seen',
  'not-found': 'no-connect',
  denied: 'no-connect',
  'no-reply': 'no-connect',
  'odd-reply': 'no-connect',
  'driver-error': 'no-connect',
  unreachable: 'no-connect',
  'drops-quiet': 'drops',
  'drops-motors': 'drops',
  'drops-random': 'drops',
  'drops-device': 'drops',
  refuses: 'no-move',
  'no-motion': 'no-move',
  'misses-small': 'elsewhere',
  'misses-anyhow': 'elsewhere',
  creeps: 'elsewhere',
};

/** Whether something else in the set-up is met before the oddity; a tube that lands elsewhere hides a small miss and a slow drift. */
const isHidden = (w: World, { shows }: Oddity): boolean => {
  const [without, own] = [howFarOf({ ...w, oddity: null }), STOPS_AT[shows]];
  const isSmall = shows === 'misses-small' || shows === 'creeps';
  return COURSE.indexOf(without) < COURSE.indexOf(own) || (without === own && isSmall);
};

/** What is truly there to see; null where the bench has no rule for the check. */
export const seenBy = (w: World, check: string): string | null => {
  if (w.oddity !== null && DOINGS.has(check) && isHidden(w, w.oddity)) return seenBy({ ...w, oddity: null }, check);
  return w.oddity?.seen?.[check] ?? RULES[check]?.(w) ?? null;
};

/** By what a member says that "something changed": how far it gets, what the program says, where the tube lands. */
const complaint = (w: World): string => {
  const lands = howFarOf(w) === 'elsewhere' ? seenBy(w, 'miss') : '';
  return [complaintOf(w), seenBy(w, 'how-far'), lands].join(' ');
};

/** Finer words for what coarser answers also say; used while a check does not offer them. */
const COARSER: Readonly<Record<string, string>> = {
  device: 'random',
  weather: 'random',
  hour: 'random',
  'one-place': 'random',
  minutes: 'quiet',
  'other-family': 'look-alike',
};

/** What is truly there to see, as one of the answers that the check offers; null where the bench has no rule. */
export const seenAs = (model: TriageModel, w: World, check: string): string | null => {
  const seen = seenBy(w, check);
  const offered = model.check(check)?.answers.map(({ id }) => id) ?? [];
  return seen === null || offered.includes(seen) ? seen : (COARSER[seen] ?? seen);
};

export interface Member {
  readonly world: () => World;
  readonly answers: (check: string) => string;
  /** Outcome of doing the remedy of a fault. */
  readonly tries: (fault: string) => 'works' | 'same' | 'changed' | 'could-not';
  /** Check ids asked that the bench has no rule for. */
  readonly unknown: ReadonlySet<string>;
}

export const memberAt = (model: TriageModel, start: World, seed: string, noise: Noise = NOISE): Member => {
  const random: Random = randomFrom(seed);
  let world = start;
  const said = new Map<string, { readonly from: string; readonly answer: string }>();
  const unknown = new Set<string>();

  const look = (check: string): string => {
    const seen = seenAs(model, world, check);
    const entry = model.check(check);
    if (seen === null || entry === undefined) {
      if (check !== 'numbers') unknown.add(check);
      return 'unsure';
    }
    const before = said.get(check);
    if (before !== undefined && before.from === seen && (before.answer === seen || random.chance(noise.keepsToIt)))
      return before.answer;
    if (random.chance(noise.unsure)) return 'unsure';
    if (seen !== entry.good && JUDGED.has(check) && random.chance(noise.tooSoonFine)) return entry.good;
    const others = entry.answers.map(({ id }) => id).filter((id) => id !== seen);
    return random.chance(noise.misread) ? random.pick(others) : seen;
  };

  return {
    world: () => world,
    unknown,
    answers: (check) => {
      const answer = look(check);
      said.set(check, { from: seenAs(model, world, check) ?? '', answer });
      return answer;
    },
    tries: (fault) => {
      if (BEYOND_REPAIR[fault]?.(world) === true) return 'could-not';
      const mended = REMEDY_CHANGES[fault]?.(world) ?? world;
      const helps = complaint(mended) !== complaint(world) || isWell(mended);
      const cannot = helps || mended === world ? (CANNOT_TONIGHT[fault] ?? 0) : 0;
      if (random.chance(Math.max(noise.couldNot, noise.couldNot > 0 ? cannot : 0))) return 'could-not';
      if (random.chance(noise.doneWrongly)) return 'same';
      const before = complaint(world);
      world = mended;
      if (isWell(world)) return 'works';
      return complaint(world) === before ? 'same' : 'changed';
    },
  };
};
