/** Names a mistyped setting: one that nobody reads might be the club's own Sun limit. */
import { nearestName } from '../ground/edit-distance.js';
import { settingNames, type Environment } from './settings.js';

/** Read elsewhere than by the bot: by the script that fetches Matrix's library. */
const OTHERS = ['MATRIX_ENCRYPTION_LIBRARY', 'MATRIX_ENCRYPTION'];

const OUR_BEGINNINGS = /^(?:PIERHAND|DISCORD|MATRIX|SUN)_/u;

/** With small letters, or other marks between the words. */
const squeezed = (name: string): string => name.toUpperCase().replace(/[^A-Z0-9]/gu, '');

const OURS: ReadonlyMap<string, string> = new Map(settingNames.map((name) => [squeezed(name), name]));

/** How far a name may be from one of ours to be taken for it: other programs have names too, so less where the beginning is not ours. */
const slipsIn = (name: string): number => {
  if (OUR_BEGINNINGS.test(name)) return 3;
  return name.length < 8 ? 1 : 2;
};

/** The setting that has the name's words, with our first word before them or without it, or begins with them. */
const sameWords = (name: string): string | undefined => {
  const given = squeezed(name);
  const bare = given.replace(/^PIERHAND/u, '');
  // A single word (PREFIX, DATA) is many a program's.
  const candidates = name.includes('_') ? [bare, `PIERHAND${given}`] : [bare];
  return (
    candidates.find((one) => OURS.has(one)) ??
    (bare.startsWith('SUN') ? [...OURS.keys()].find((one) => one.startsWith(bare)) : undefined)
  );
};

const meantBy = (name: string): string | undefined =>
  OURS.get(sameWords(name) ?? nearestName(squeezed(name), OURS.keys(), slipsIn(name)) ?? '');

/** A line for each variable that looks like one of ours and is none; nothing of its value. */
export const unknownSettings = (env: Environment): readonly string[] =>
  Object.keys(env)
    .filter((name) => !settingNames.includes(name) && !OTHERS.includes(name) && !name.startsWith('PIERHAND_TEST_'))
    .flatMap((name) => {
      const meant = meantBy(name);
      if (meant === undefined && !OUR_BEGINNINGS.test(name)) return [];
      return [`${name} is no setting of mine and is not read.${meant === undefined ? '' : ` Is ${meant} meant?`}`];
    });
