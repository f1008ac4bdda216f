/** The evening or the morning of a night: "can I see Venus in the evening in January" is no question of the whole of it. */
import { bedtimeOf, nightAround, type NamedNight } from '../../times/index.js';
import { MS_PER_DAY, MS_PER_HOUR } from '../../ground/durations.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import type { Target } from '../../catalogue/index.js';
import { outlook, type Outlook } from '../../evening/outlook.js';
import type { OutlookQuestion } from '../../evening/windows.js';
import type { Reply } from '../../reply/reply.js';
import { compassWord, degrees } from '../../reply/wording.js';
import type { TimeSpan } from '../../sky/night.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { nightFor, type TargetAtSite } from '../asking/question-parts.js';

type Site = TargetAtSite['where']['site'];

export interface PartOfNight {
  readonly night: NamedNight;
  readonly part: 'morning' | 'evening';
  readonly within: TimeSpan;
}

/** A morning's looking begins so long after half past midnight; common practice, no source. */
const TO_MORNING_MS = 2.5 * MS_PER_HOUR;
const PART = /^\s*(?:(?<day>\S.*?) )?(?:in the )?(?<part>morning|evening)\s*$/iu;
const SAID_OF_NOW = /^(?:this|tonight|tomorrow)$/iu;

/** "evening", "15 january morning"; null: the words are an hour, or none. The morning of a day ends the night before it. */
export const partOfNight = (
  { on, at }: { readonly on?: string | undefined; readonly at?: string | undefined },
  site: Site,
  nowUtcMs: UtcMs,
): PartOfNight | Problem | null => {
  const { day, part: said } = PART.exec(at ?? '')?.groups ?? {};
  if (said === undefined || (day !== undefined && SAID_OF_NOW.test(day))) return null;
  const part = said.toLowerCase() === 'morning' ? 'morning' : 'evening';
  const named = nightFor(day ?? on, site, nowUtcMs);
  if (isProblem(named)) return named;
  const night = part === 'morning' && day !== undefined ? nightAround(named.startUtcMs - MS_PER_DAY / 2, site) : named;
  const bedtimeUtcMs = bedtimeOf(night, site.zone);
  return {
    night,
    part,
    within:
      part === 'evening'
        ? { startUtcMs: night.startUtcMs, endUtcMs: bedtimeUtcMs }
        : { startUtcMs: bedtimeUtcMs + TO_MORNING_MS, endUtcMs: night.endUtcMs },
  };
};

/** How it fares in that part; it rises and sets as in the whole night. */
export const outlookWithin = (question: OutlookQuestion, part: PartOfNight | null): Outlook => {
  if (part === null) return outlook(question);
  const { target, observer, night } = question;
  return {
    ...outlook({ ...question, night: part.within }),
    times: riseTransitSet(target.body, observer, night.startUtcMs, night.endUtcMs),
  };
};

/** Where it shows in the other part of the night alone, that is said with the answer, and judged beside the Sun. */
export const withOtherPart = (
  answer: Reply,
  question: OutlookQuestion,
  {
    part,
    found,
    target,
    zone,
  }: { readonly part: PartOfNight | null; readonly found: Outlook; readonly target: Target; readonly zone: string },
): Reply => {
  if (part === null || found.verdict === 'up') return answer;
  const { verdict, best, azimuthDeg } = outlook(question);
  if (verdict !== 'up') return answer;
  const other = part.part === 'evening' ? 'Before dawn' : 'In the evening';
  const when = `${degrees(best.altitudeDeg)} high in the ${compassWord(azimuthDeg)} at ${formatLocalTime(best.utcMs, zone)}`;
  const point = {
    what: target.name,
    when: { utcMs: best.utcMs },
    observer: question.observer,
    zone,
    direction: target.body,
  };
  return {
    ...answer,
    summary: `${answer.summary} ${other} it shows: ${when}.`,
    pointsAt: [...answer.pointsAt, point],
  };
};
