/** Judges the Sun for every direction and instant a reply names, raises its level to the worst and words the caution. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { cautionText } from '../../cautions/cautions.js';
import { graver } from '../../reply/levels.js';
import type { PointsAt, Reply } from '../../reply/reply.js';
import { degrees, listed } from '../../reply/wording.js';
import type { SunLevel, SunLimits } from '../../sky/sun-safety.js';
import { sunAtWorst, type SunAtWorst } from '../../sky/sun-span.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, formatLocalTime } from '../../times/index.js';
import { sunEdgeWords } from '../asking/sun-edge-words.js';

/** Said where the Sun is up and all that is named is clear of it: still nobody sweeps about by day unawares. */
const farWords = (judged: readonly Judged[], nowUtcMs: UtcMs | undefined): readonly string[] => {
  const up = judged.filter(({ worst }) => worst.isSunUp);
  return up.length === 0 ? [] : [`${upWords(up, nowUtcMs)}: do not sweep across it.`];
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
const DAY_AHEAD_MS = 18 * MS_PER_HOUR;

const judge = (point: PointsAt, limits: SunLimits | undefined): Judged => {
  const { when, observer, direction } = point;
  const span =
    'utcMs' in when
      ? { startUtcMs: when.utcMs, endUtcMs: when.utcMs }
      : { startUtcMs: when.fromUtcMs, endUtcMs: when.untilUtcMs };
  return { point, worst: sunAtWorst(direction, observer, span, limits) };
};

/** Whether it is told to someone who plans, not to someone at the telescope. */
const isAhead = (utcMs: UtcMs, nowUtcMs: UtcMs | undefined): boolean =>
  nowUtcMs !== undefined && Math.abs(utcMs - nowUtcMs) > DAY_AHEAD_MS;

/** Of one named instant, or of several or a span. */
const isOneInstant = (judged: readonly Judged[]): boolean => {
  const [first] = judged;
  return judged.every(({ point, worst }) => 'utcMs' in point.when && worst.utcMs === first?.worst.utcMs);
};

/** "12° from Venus", with the time where more than one instant was named, and the day too where it is another. */
const nearWords = ({ point, worst }: Judged, isPlain: boolean, nowUtcMs: UtcMs | undefined): string => {
  const near = `${degrees(worst.separationDeg)} from ${point.what}`;
  if (isPlain) return near;
  if (isAhead(worst.utcMs, nowUtcMs)) return `${near} (${formatLocalDateTime(worst.utcMs, point.zone)})`;
  return 'utcMs' in point.when ? near : `${near} at ${formatLocalTime(worst.utcMs, point.zone)}`;
};

/** The nearest first, each thing once. */
const nearest = (near: readonly Judged[], nowUtcMs: UtcMs | undefined): readonly string[] => {
  const sorted = [...near].sort((a, b) => a.worst.separationDeg - b.worst.separationDeg);
  const once = sorted.filter((each, i) => sorted.findIndex(({ point }) => point.what === each.point.what) === i);
  const said = once.slice(0, NAMED_AT_MOST).map((each) => nearWords(each, isOneInstant(near), nowUtcMs));
  return once.length > NAMED_AT_MOST ? [...said, `${once.length - NAMED_AT_MOST} more`] : said;
};

/** "The Sun is up", or that it will be. */
const upWords = (near: readonly Judged[], nowUtcMs: UtcMs | undefined): string =>
  `The Sun is up${near.every(({ worst }) => isAhead(worst.utcMs, nowUtcMs)) ? ' then' : ''}, ${listed(nearest(near, nowUtcMs))}`;

/** "The Sun is up soon" is for those at the telescope; who plans ahead is told the day. */
const sunriseWords = ({ point, worst }: Judged, nowUtcMs: UtcMs | undefined): string => {
  const sunriseUtcMs = worst.sunriseUtcMs ?? worst.utcMs;
  const rises = (format: typeof formatLocalTime): string =>
    sunEdgeWords(point.observer, sunriseUtcMs, 'rise', point.zone, format);
  return isAhead(sunriseUtcMs, nowUtcMs)
    ? `Sunrise ${rises(formatLocalDateTime)}, within the hour after ${point.what}: the Sun then blinds, so cap and park before it.`
    : `Sunrise at ${rises(formatLocalTime)}. ${cautionText('sunrise')}`;
};

/** The first sunrise there is to fear. */
const firstSunrise = (grave: readonly Judged[]): Judged | undefined =>
  grave
    .filter(({ worst }) => !worst.isSun && worst.sunriseUtcMs !== null)
    .sort((a, b) => (a.worst.sunriseUtcMs ?? 0) - (b.worst.sunriseUtcMs ?? 0))[0];

/**
 * The Sun's level over all that is named, and the cautions to say. By day: danger and caution by the club's limits; before
 * sunrise: caution with the time, when the Sun rises within the hour; the Sun itself: always danger, with the filter text.
 */
export const judgeSun = (points: readonly PointsAt[], limits?: SunLimits, nowUtcMs?: UtcMs): SunJudgement => {
  const all = points.map((point) => judge(point, limits));
  const grave = all.filter(({ worst }) => worst.level !== 'clear');
  const level = SUN_LEVELS[Math.max(0, ...grave.map(({ worst }) => SUN_LEVELS.indexOf(worst.level)))] ?? 'danger';
  const near = grave.filter(({ worst }) => !worst.isSun && worst.sunriseUtcMs === null);
  const before = firstSunrise(grave);
  return {
    level,
    notes: level === 'clear' ? farWords(all, nowUtcMs) : [],
    cautions: [
      ...(grave.some(({ worst }) => worst.isSun) ? [`This is the Sun. ${cautionText('sun-filter')}`] : []),
      ...(near.length === 0 ? [] : [`${upWords(near, nowUtcMs)}. ${cautionText('sun')}`]),
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
