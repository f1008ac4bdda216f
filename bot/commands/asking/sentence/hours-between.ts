/** "Between 7 and 9", "from 22:00 to half past midnight": the hours that something is asked for, both ends of them. */
import { numberOf, runsOf, take, type Sentence } from './words.js';

export interface HoursBetween {
  /** "19:00", as the time rooms read it. */
  readonly from: string;
  readonly until: string;
}

const HOUR =
  "(\\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?:[:.](\\d{2}))? ?(am|pm|a\\.m|p\\.m|o'?clock)?|(midnight|noon)";
const BETWEEN = new RegExp(
  `^(?:between|from|btw|b/w) (?:${HOUR}) (?:and|to|till|til|until|&|-|–) (?:${HOUR})( in the morning)?$`,
  'u',
);
const LONGEST = 9;
/** What else numbers are between. */
const OF_OTHER_BEFORE = /^(?:mags?|magnitudes?|altitudes?|heights?|size|sizes|separations?)$/u;
const OF_OTHER_AFTER =
  /^(?:mags?|magnitudes?|degrees?|deg|°|inch\w*|mm|arc\w*|arcsec\w*|minutes?|hours?|hrs?|in|x|times|light|ly|power)$/u;

const MINUTES = 60;
const HALF_DAY = 12;

interface Read {
  readonly hour: number;
  readonly minute: number;
  /** "" where neither half of the day is said. */
  readonly half: '' | 'am' | 'pm';
}

const readHour = (figures: string | undefined, minutes = '0', suffix = '', named = ''): Read | null => {
  if (named !== '') return { hour: HALF_DAY, minute: 0, half: named === 'noon' ? 'pm' : 'am' };
  const hour = numberOf(figures ?? '');
  const minute = Number(minutes);
  if (hour === null || hour > 24 || minute >= MINUTES) return null;
  const half = suffix.startsWith('a') ? 'am' : 'pm';
  return { hour, minute, half: /^[ap]/u.test(suffix) ? half : '' };
};

/** Without am or pm an hour is one of the dark: five to eleven in the evening, twelve to four in the morning. */
const clockOf = ({ hour, minute, half }: Read): string => {
  const isMorning = half === '' ? hour === HALF_DAY || hour < 5 : half === 'am';
  const inDay = hour > HALF_DAY ? hour % 24 : (hour % HALF_DAY) + (isMorning ? 0 : HALF_DAY);
  return `${String(inDay).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
};

/** "7 and 9pm" are both of the evening, "11 and 1am" are not. */
const sharing = (first: Read, last: Read): Read =>
  first.half === '' && last.half !== '' && first.hour % HALF_DAY < last.hour % HALF_DAY
    ? { ...first, half: last.half }
    : first;

const FOUR = '([01]\\d|2[0-3])([0-5]\\d)(?:h|hrs)?';
/** "2200-0100", as observers write it. */
const IN_FIGURES = new RegExp(`^(?:between |from )?${FOUR} ?(?:-|–|—|to|till|til|until|and) ?${FOUR}$`, 'u');
const A_YEAR = /^20[2-5]\d$/u;

const figuresBetween = (plain: string): HoursBetween | null => {
  const [, hour = '', minute = '', lastHour = '', lastMinute = ''] = IN_FIGURES.exec(plain) ?? [];
  const areYears = A_YEAR.test(`${hour}${minute}`) && A_YEAR.test(`${lastHour}${lastMinute}`);
  return hour === '' || areYears ? null : { from: `${hour}:${minute}`, until: `${lastHour}:${lastMinute}` };
};

/** Its words are taken; null where none is said. */
export const takeHoursBetween = (sentence: Sentence): HoursBetween | null => {
  const { words } = sentence;
  for (const run of runsOf(sentence, LONGEST)) {
    const inFigures = figuresBetween(run.plain);
    if (inFigures !== null) {
      take(sentence, run);
      return inFigures;
    }
    const found = BETWEEN.exec(run.plain);
    if (found === null) continue;
    const isOfOther =
      OF_OTHER_BEFORE.test(words[run.at - 1]?.plain ?? '') ||
      OF_OTHER_AFTER.test(words[run.at + run.count]?.plain ?? '');
    const [first, last] = [readHour(...parts(found, 1)), readHour(...parts(found, 5))];
    if (isOfOther || first === null || last === null) continue;
    take(sentence, run);
    const end: Read = found[9] !== undefined && last.half === '' ? { ...last, half: 'am' } : last;
    return { from: clockOf(sharing(first, end)), until: clockOf(end) };
  }
  return null;
};

const parts = (
  found: RegExpExecArray,
  at: number,
): [
  figures: string | undefined,
  minutes: string | undefined,
  suffix: string | undefined,
  named: string | undefined,
] => [found[at], found[at + 1], found[at + 2], found[at + 3]];
