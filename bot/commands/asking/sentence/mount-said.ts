/** The kind of mount that a sentence names: "my dob", "on an alt-az", "fork mounted sct". Its words are of gear, and no part of a target or a place. */
import type { MountKind } from '../../../pointing/mount/mount.js';
import { runsOf, take, type Sentence } from './words.js';

const MOUNTS: readonly (readonly [RegExp, MountKind])[] = [
  [/\b(?:dob|dobs|dobsonians?|alt[- /]?az\w*|azimuthal|push-to)\b/u, 'altaz'],
  [/\b(?:forks?|fork-mount\w*|wedge)\b/u, 'fork'],
  [/\b(?:german|equatorial|gem|eq)\b/u, 'german'],
];

/** @param plain in lower case */
export const mountSaid = (plain: string): MountKind | null =>
  MOUNTS.find(([pattern]) => pattern.test(plain))?.[1] ?? null;

/** Words of a mount or of the tube upon it that are names in the sky or of towns as well. */
const GEAR =
  /^(?:(?:alt[- /]?az\w*|forks?|fork[- ]mount\w*|german|equatorial|gem|eq|wedge|dob|dobs|dobsonians?|push-to)(?: (?:mount\w*|scope|telescope))?|sct|newt|newtonian|mak|maksutov|refractor|reflector|cassegrain|mounted)$/u;

/** @param word in lower case */
export const isOfGear = (word: string): boolean => GEAR.test(word);

/** As `mountSaid`; what is said of mount and tube is taken. */
export const takeMount = (sentence: Sentence): MountKind | null => {
  for (const run of runsOf(sentence, 2)) if (GEAR.test(run.plain)) take(sentence, run);
  return mountSaid(sentence.words.map(({ plain }) => plain).join(' '));
};
