/** What a yes or a no is asked of, and the words that its answers share. */
import type { Outlook } from '../../evening/outlook.js';
import type { Towards } from '../../evening/towards.js';
import type { OutlookQuestion } from '../../evening/windows.js';
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { degrees, compassWord } from '../../reply/wording.js';
import type { Place, UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, formatLocalTime, type NamedNight } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';

export interface WhetherQuestion {
  readonly asked: TargetAtSite;
  readonly night: NamedNight;
  /** The hour asked about; null: none. */
  readonly utcMs: UtcMs | null;
  readonly aboveDeg: number | undefined;
  readonly facing: Towards | undefined;
  readonly outlookQuestion: OutlookQuestion;
  readonly found: Outlook;
}

/** The words, and what follows them: the night's best hour, the night's verdict as the rest of the sentence, or nothing. */
export interface SaidWhether {
  readonly words: string;
  readonly then: 'best' | 'verdict' | 'nothing';
}

export const best = (words: string): SaidWhether => ({ words, then: 'best' });
export const verdict = (words: string): SaidWhether => ({ words, then: 'verdict' });
export const alone = (words: string): SaidWhether => ({ words, then: 'nothing' });

/** The time of day; the date with it where it is not of the night that is asked about. */
export const timeText = (utcMs: UtcMs, { asked, night }: WhetherQuestion): string => {
  const { zone } = asked.where.site;
  const isOfNight = utcMs >= night.startUtcMs && utcMs <= night.endUtcMs;
  return isOfNight ? formatLocalTime(utcMs, zone) : formatLocalDateTime(utcMs, zone);
};

export const nowIn = (question: WhetherQuestion): UtcMs =>
  question.utcMs ?? Math.max(question.outlookQuestion.nowUtcMs, question.night.startUtcMs);

const MORNING_MS = 12 * MS_PER_HOUR;
/** The moment that "is it up" is of: this very one, in the morning too, whose night is the coming one; of a later night its beginning. */
export const momentOf = (question: WhetherQuestion): UtcMs => {
  const { nowUtcMs } = question.outlookQuestion;
  const isOfThisNight = question.night.startUtcMs - nowUtcMs < MORNING_MS;
  return question.utcMs === null && isOfThisNight ? nowUtcMs : nowIn(question);
};

export const isUnderWay = ({ outlookQuestion: { nowUtcMs }, night }: WhetherQuestion): boolean =>
  nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;

/** "38° high in the south". */
export const standWords = ({ apparentAltitudeDeg, azimuthDeg }: Place): string =>
  `${degrees(apparentAltitudeDeg)} high in the ${compassWord(azimuthDeg)}`;

/** No hour is asked about but this one. */
export const isOfNow = ({ utcMs, outlookQuestion: { nowUtcMs } }: WhetherQuestion): boolean =>
  utcMs === null || Math.abs(utcMs - nowUtcMs) < MS_PER_MINUTE;
