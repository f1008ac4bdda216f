/** What the likeness of a line to those that are known makes of it where no rule does: a warning, a doubt, or that it hurts nobody. */
import { tellsAstray } from '../../../reading/index.js';
import { createKept } from '../../../ground/kept.js';
import { BURNS } from '../sentence/sun-now.js';
import type { SunCaution } from '../sentence/sun-guards.js';
import {
  CAMERA,
  GUARD,
  LOOKS,
  MAY,
  NEAR_SUN,
  NO_FILTER,
  plainHarm,
  SAYS_DAY,
  SAYS_NIGHT,
  SUN,
  SUN_ABROAD,
  sunCautionFor,
  SWEEPS,
  TUBE,
} from '../sentence/sun-harm.js';
import { RUNS } from '../sentence/sun-kinds.js';
import { likelySun, type HarmKind, type LikelySun } from './likely-sun.js';
import { sunWeights } from './shipped-weights.js';

/** From here on it is taken for a harm: of a hundred lines on mounts and the night not one is so like it (fit-sun.ts prints it). */
const SURE = 0.55;
/** Where a walk waits, what is said is most often of the mount. */
const SURE_IN_WALK = 0.9;
/** From here on a line that nothing else follows gets a sentence of caution. */
const PERHAPS = 0.4;
/** From here on it is harmless; where looking or safety is spoken of, from the other. */
const HARMLESS = 0.7;
const PLAINLY_HARMLESS = 0.85;
/** A word alone is a name. */
const LEAST_WORDS = 3;

const CAUTION_OF: Readonly<Record<HarmKind, (plain: string) => SunCaution>> = {
  harmed: (plain) => (BURNS.test(plain) ? 'sun-now' : 'eyes'),
  open: (plain) => (RUNS.test(plain) ? 'sun-left' : 'sun-open'),
  looks: (plain) => (NEAR_SUN.test(plain) || SWEEPS.test(plain) ? 'sun-sweep' : sunCautionFor(plain)),
};

const isBrief = (plain: string): boolean => plain.split(' ').length < LEAST_WORDS;

/** "When the sun goes down" is an hour; in other languages from memory. */
const AFTER_SUNSET =
  /\b(?:ce soir|stasera|esta noche|heute (?:abend|nacht)|vanavond|hoje a noite)\b|\b(?:after|once|when|as soon as|since) (?:the )?sun (?:is |has |s )?(?:sets?|down|gone(?: down)?|goes down|went down)\b|\b(?:dopo|nach|despues de|apres|depois|na|po) (?:il |dem |la |el |le |o )?(?:tramonto|sonnenuntergang|puesta|coucher|por|zonsondergang|zachod\w*)(?: d\w{1,2} (?:sole?|soleil))?\b/gu;
/** By its own words it is of the night, and not of the Sun. */
const isOfNight = (plain: string): boolean => {
  const rest = plain.replace(AFTER_SUNSET, 'tonight');
  const isOfSun = SUN.test(rest) || SUN_ABROAD.test(rest) || SAYS_DAY.test(rest);
  return (SAYS_NIGHT.test(rest) || MOON.test(rest)) && !isOfSun;
};
const MOON = /\b(?:moon|luna|lune|mond|maan|lua)\b/u;

/** A line is asked about several times. */
const KEPT = 64;
const kept = createKept<string, LikelySun>(KEPT);
const likely = (text: string): LikelySun => kept(text, () => likelySun(sunWeights(), text));

export interface HeardHarm {
  readonly harm: HarmKind;
  /** What is to be said first. */
  readonly caution: SunCaution;
  /** It is so even where a walk waits for its answer; there “let it run overnight” is a trial. */
  readonly isSureInWalk: boolean;
}

/** "Not the sun in the sky, my son". */
const NOT_THE_SUN = /\bnot (?:about |at |of )?(?:the )?sun\b/u;

/** @returns null: it is not so like what hurts */
export const heardHarm = (text: string): HeardHarm | null => {
  const plain = plainHarm(text);
  if (isBrief(plain) || NOT_THE_SUN.test(plain) || tellsAstray(text)) return null;
  const { danger, harm } = likely(text);
  if (danger < SURE || (harm === 'looks' && isOfNight(plain))) return null;
  return { harm, caution: CAUTION_OF[harm](plain), isSureInWalk: harm !== 'open' && danger >= SURE_IN_WALK };
};

/** It may be of a harm. */
export const isPerhapsHarm = (text: string): boolean => !isBrief(plainHarm(text)) && likely(text).danger >= PERHAPS;

/** "Going to the sun". */
const SENT_TO_SUN =
  /\b(?:go(?:es|ing)?|goto|slew\w*|head\w*|point\w*|aim\w*|track\w*|swing\w*|turn\w*|mov(?:e|ing)) (?:\w+ ){0,2}?(?:to|at|on|onto|for|towards?) (?:the |a )?sun\b|\btrack\w* (?:the )?sun\b/u;
/** "How do I see the sun". */
const LOOKS_AT_SUN =
  /\b(?:see|seeing|look\w*|watch\w*|view\w*|observ\w*|glanc\w*|peek\w*|peer\w*|star(?:e|ing) at|gaz\w*|spot|find\w*|photograph\w*|imag(?:e|ing)|show\w*) (?:\w+ ){0,4}?sun\b/u;
/** What one does, looks with or does without, and what is seen on it: whatever the likeness says, these are warned of. */
const ACTS = [
  TUBE,
  CAMERA,
  NO_FILTER,
  SENT_TO_SUN,
  LOOKS_AT_SUN,
  /\b(?:sun ?spots?|prominences?|h ?alpha|white light)\b/u,
] as const;

/** Of lines in other scripts too few are known. */
const OTHER_SCRIPT = /[^\p{Script=Latin}\P{L}]/u;

/** Nothing speaks for looking, so that a fact may be told. */
export const mayBeFact = (text: string): boolean =>
  ![TUBE, CAMERA, NO_FILTER].some((act) => act.test(plainHarm(text))) && likely(text).danger < 0.5;

/** It is of no harm, whatever was spoken of before. */
export const isHarmless = (text: string): boolean => {
  const plain = plainHarm(text);
  if (OTHER_SCRIPT.test(text) || ACTS.some((act) => act.test(plain))) return false;
  const isOfLooks = LOOKS.test(plain) || MAY.test(plain) || GUARD.test(plain);
  return likely(text).harmless >= (isOfLooks ? PLAINLY_HARMLESS : HARMLESS);
};

/** "Is the Sun a planet": it is of the Sun, and nobody looks. */
export const isTalkOfSun = (text: string): boolean => {
  const plain = plainHarm(text);
  return (SUN.test(plain) || SUN_ABROAD.test(plain)) && isHarmless(text);
};
