/** A mount's own numbers as members write them: the top speeds of its axes, and how far past level its bar may turn. */
import { problem, type Problem } from '../../ground/problem.js';
import { degrees } from '../../reply/wording.js';
import type { Gear } from '../../store/store.js';

type Speeds = NonNullable<Gear['speeds']>;
type Limits = NonNullable<Gear['limits']>;

/** The wordless part of a speed: "4°/s", "4 deg/s", "4 degrees a second". */
const PER_SECOND = /°\s*\/\s*s|deg(?:rees)?\s*(?:\/|per|a)\s*s(?:ec(?:ond)?)?|°/giu;
const GREATEST_SPEED_DEG_PER_S = 50;
const GREATEST_LIMIT_DEG = 45;

/** "4,3", "4 3", "4°/s": degrees a second of the first and the second axis; one number serves both. */
export const readSpeeds = (text: string): Speeds | Problem => {
  const match = /^(\d{1,2}(?:\.\d+)?)(?:(?:\s*[,;/x]\s*|\s+(?:and\s+)?)(\d{1,2}(?:\.\d+)?))?$/iu.exec(
    text.replace(PER_SECOND, ' ').trim().replace(/\s+,/gu, ','),
  );
  const primaryDegPerS = Number(match?.[1]);
  const secondaryDegPerS = Number(match?.[2] ?? match?.[1]);
  const isSpeed = (speed: number): boolean => speed > 0 && speed <= GREATEST_SPEED_DEG_PER_S;
  return isSpeed(primaryDegPerS) && isSpeed(secondaryDegPerS)
    ? { primaryDegPerS, secondaryDegPerS }
    : problem(
        'bad-speeds',
        `speeds: takes the top speeds of both axes in degrees a second, up to ${GREATEST_SPEED_DEG_PER_S}, right ascension or azimuth first: speeds:4,3`,
      );
};

/** "5,10" or "5 east, 10 west" or "10 west": degrees past level, east and west; a side not named is 0. */
export const readLimits = (text: string): Limits | Problem => {
  const bad = problem(
    'bad-limits',
    `limits: takes how many degrees past level the counterweight bar may turn, east then west, 0 to ${GREATEST_LIMIT_DEG}: limits:0,10 or limits:"10 west"`,
  );
  const plain = /^(\d{1,2}(?:\.\d+)?)°?\s*[,;/\s]\s*(\d{1,2}(?:\.\d+)?)°?$/u.exec(text.trim());
  const sided = [...text.matchAll(/(\d{1,2}(?:\.\d+)?)\s*°?\s*(east|west|e|w)\b/giu)];
  const rest = text.replace(/(\d{1,2}(?:\.\d+)?)\s*°?\s*(east|west|e|w)\b|and|[,;\s]/giu, '');
  if (plain === null && (sided.length === 0 || rest !== '')) return bad;
  const side = (letter: string): number =>
    Number(sided.find(([, , word]) => word!.toLowerCase().startsWith(letter))?.[1] ?? 0);
  const limits =
    plain === null
      ? { eastDeg: side('e'), westDeg: side('w') }
      : { eastDeg: Number(plain[1]), westDeg: Number(plain[2]) };
  return Math.max(limits.eastDeg, limits.westDeg) > GREATEST_LIMIT_DEG ? bad : limits;
};

const plainDegrees = (deg: number): string => degrees(deg, Number.isInteger(deg) ? 0 : 1);

/** "4° and 3° a second". */
export const speedsWords = ({ primaryDegPerS, secondaryDegPerS }: Speeds): string =>
  `${plainDegrees(primaryDegPerS)} and ${plainDegrees(secondaryDegPerS)} a second`;

/** "5° east, 10° west". */
export const limitsWords = ({ eastDeg, westDeg }: Limits): string =>
  `${plainDegrees(eastDeg)} east, ${plainDegrees(westDeg)} west`;
