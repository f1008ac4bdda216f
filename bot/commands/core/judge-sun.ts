/** Judges the Sun for every direction and instant a reply names, raises its level to the worst and words the caution. */
import { cautionText } from '../../cautions/cautions.js';
import { graver } from '../../reply/levels.js';
import type { PointsAt, Reply } from '../../reply/reply.js';
import { degrees, listed } from '../../reply/wording.js';
import type { SunLevel, SunLimits } from '../../sky/sun-safety.js';
import { sunAtWorst, type SunAtWorst } from '../../sky/sun-span.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, formatLocalTime } from '../../times/index.js';

/** Said where the Sun is up and all that is named is clear of it: still nobody sweeps about by day unawares. */
const farWords = (judged: readonly Judged[]): readonly string[] => {
  const up = judged.filter(({ worst }) => worst.isSunUp);
  return up.length === 0 ? [] : [`The Sun is up, ${listed(nearest(up))}: do not sweep across it.`];
};

export interface SunJudgement {
  /** The worst over all that was named: `clear` when nothing needs saying. */
  readonly level: SunLevel;
  /** Ready to be shown; empty when the level is clear. */
  readonly cautions: readonly string[];
  /** By day with all clear: that the Sun is up, and how far. */
  readonly notes: readonly string[];
}

interface Judged {
  readonly point: PointsAt;
  readonly worst: SunAtWorst;
}

const SUN_LEVELS: readonly SunLevel[] = ['clear', 'caution', 'danger'];
/** So many are named in one caution; the others are counted. */
const NAMED_AT_MOST = 3;
const DAY_AHEAD_MS = 18 * 3_600_000;

const judge = (point: PointsAt, limits: SunLimits | undefined): Judged => {
  const { when, observer, direction } = point;
  const span =
    'utcMs' in when
      ? { startUtcMs: when.utcMs, endUtcMs: when.utcMs }
      : { startUtcMs: when.fromUtcMs, endUtcMs: when.untilUtcMs };
  return { point, worst: sunAtWorst(direction, observer, span, limits) };
};

/** "12° from Venus", with the time where a span was named. */
const nearWords = ({ point, worst }: Judged): string =>
  `${degrees(worst.separationDeg)} from ${point.what}${'utcMs' in point.when ? '' : ` at ${formatLocalTime(worst.utcMs, point.zone)}`}`;

/** The nearest first, each thing once. */
const nearest = (near: readonly Judged[]): readonly string[] => {
  const sorted = [...near].sort((a, b) => a.worst.separationDeg - b.worst.separationDeg);
  const once = sorted.filter((each, i) => sorted.findIndex(({ point }) => point.what === each.point.what) === i);
  const said = once.slice(0, NAMED_AT_MOST).map(nearWords);
  return once.length > NAMED_AT_MOST ? [...said, `${once.length - NAMED_AT_MOST} more`] : said;
};

/** "The Sun is up soon" is for those at the telescope; who plans ahead is told the day. */
const sunriseWords = ({ point, worst }: Judged, nowUtcMs: UtcMs | undefined): string => {
  const sunriseUtcMs = worst.sunriseUtcMs ?? worst.utcMs;
  return nowUtcMs !== undefined && sunriseUtcMs - nowUtcMs > DAY_AHEAD_MS
    ? `The Sun rises within the hour after it, ${formatLocalDateTime(sunriseUtcMs, point.zone)}: cap and park before then.`
    : `Sunrise at ${formatLocalTime(sunriseUtcMs, point.zone)}. ${cautionText('sunrise')}`;
};

/**
 * The Sun's level over all that is named, and the cautions to say. By day: danger and caution by the club's limits; before
 * sunrise: caution with the time, when the Sun rises within the hour; the Sun itself: always danger, with the filter text.
 */
export const judgeSun = (points: readonly PointsAt[], limits?: SunLimits, nowUtcMs?: UtcMs): SunJudgement => {
  const all = points.map((point) => judge(point, limits));
  const grave = all.filter(({ worst }) => worst.level !== 'clear');
  const level = SUN_LEVELS[Math.max(0, ...grave.map(({ worst }) => SUN_LEVELS.indexOf(worst.level)))] ?? 'danger';
  const near = grave.filter(({ worst }) => !worst.isSun && worst.sunriseUtcMs === null);
  const before = grave.find(({ worst }) => !worst.isSun && worst.sunriseUtcMs !== null);
  return {
    level,
    notes: level === 'clear' ? farWords(all) : [],
    cautions: [
      ...(grave.some(({ worst }) => worst.isSun) ? [`This is the Sun. ${cautionText('sun-filter')}`] : []),
      ...(near.length === 0 ? [] : [`The Sun is up, ${listed(nearest(near))}. ${cautionText('sun')}`]),
      ...(before === undefined ? [] : [sunriseWords(before, nowUtcMs)]),
    ],
  };
};

/** A reply with the Sun judged for all it names: its own cautions come after the Sun's. */
export const withSunJudged = (reply: Reply, limits?: SunLimits, nowUtcMs?: UtcMs): Reply => {
  const { level, cautions, notes } = judgeSun(reply.pointsAt, limits, nowUtcMs);
  return level === 'clear'
    ? { ...reply, notes: [...notes, ...reply.notes] }
    : { ...reply, level: graver(reply.level, level), cautions: [...cautions, ...reply.cautions] };
};
