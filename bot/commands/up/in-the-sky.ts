/** When a target is above the horizon, and where the Moon is meanwhile: what is past is told as past. */
import type { Outlook } from '../../evening/outlook.js';
import type { Fact } from '../../reply/reply.js';
import { moonAt, moonSeparationDeg } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import type { RiseTransitSet } from '../../sky/rise-set.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, formatLocalTime } from '../../times/index.js';
import { aboveHorizonWords, moonTimesOf, moonWords } from '../asking/night-words.js';
import type { TargetAtSite } from '../asking/question-parts.js';

/** A night under way in which it has risen, or set before it rises. */
const underWay = (riseUtcMs: UtcMs, setUtcMs: UtcMs | null, nowUtcMs: UtcMs, zone: string): string | null => {
  if (setUtcMs !== null && setUtcMs > riseUtcMs && nowUtcMs > riseUtcMs)
    return nowUtcMs > setUtcMs
      ? `no more: it set at ${formatLocalTime(setUtcMs, zone)}`
      : `until ${formatLocalTime(setUtcMs, zone)}; it rose at ${formatClock(riseUtcMs, zone)}`;
  if (nowUtcMs > riseUtcMs) return `since ${formatLocalTime(riseUtcMs, zone)}`;
  const isDown = setUtcMs !== null && setUtcMs < riseUtcMs && nowUtcMs > setUtcMs;
  return isDown ? `from ${formatLocalTime(riseUtcMs, zone)}; it set at ${formatClock(setUtcMs, zone)}` : null;
};

export const inTheSky = (times: RiseTransitSet, nowUtcMs: UtcMs, night: TimeSpan, zone: string): string => {
  const { riseUtcMs, setUtcMs } = times;
  const isUnderWay = nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;
  if (!isUnderWay) return aboveHorizonWords(times, zone);
  if (riseUtcMs !== null) return underWay(riseUtcMs, setUtcMs, nowUtcMs, zone) ?? aboveHorizonWords(times, zone);
  return setUtcMs !== null && nowUtcMs > setUtcMs
    ? `no more: it set at ${formatLocalTime(setUtcMs, zone)}`
    : aboveHorizonWords(times, zone);
};

export const moonFact = ({ target, where }: TargetAtSite, { best }: Outlook, night: TimeSpan): readonly Fact[] => {
  const { observer, zone } = where.site;
  if (target.id === 'sun') return [];
  const moon = moonAt(observer, best.utcMs);
  if (target.id === 'moon')
    return [
      {
        label: 'Lit',
        value: `${Math.round(moon.illuminatedFraction * 100)} %, ${moon.waxing ? 'growing' : 'shrinking'}`,
      },
    ];
  const separation = moonSeparationDeg(target.body, observer, best.utcMs);
  return [{ label: 'Moon', value: moonWords(moon, separation, moonTimesOf(observer, night), best.utcMs, zone) }];
};
