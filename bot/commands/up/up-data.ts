/** `up` as data, by the contract. */
import type { Outlook } from '../../evening/outlook.js';
import type { Verdict } from '../../evening/verdict.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import { bestTime } from '../../sky/best-time.js';
import { moonAt, moonSeparationDeg } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import type { TargetAtSite } from '../asking/question-parts.js';

/** `data.verdict` tells where it stands alone; `data.hindrance` what keeps it from being seen. */
const CONTRACT_VERDICT: Readonly<Partial<Record<Verdict, Verdict>>> = {
  'washed-out': 'up',
  'too-faint': 'up',
  'lost-in-sun': 'day-only',
  past: 'day-only',
};

const orNull = (utcMs: UtcMs | null): string | null => (utcMs === null ? null : isoUtc(utcMs));

export const dataOf = ({ target, where }: TargetAtSite, night: TimeSpan, found: Outlook, dark: TimeSpan | null) => {
  const { observer } = where.site;
  const { times, best } = found;
  const moon = moonAt(observer, best.utcMs);
  return {
    night: { startUtc: isoUtc(night.startUtcMs), endUtc: isoUtc(night.endUtcMs) },
    riseUtc: orNull(times.riseUtcMs),
    transitUtc: orNull(times.transitUtcMs),
    setUtc: orNull(times.setUtcMs),
    alwaysUp: times.alwaysUp,
    neverUp: times.neverUp,
    darkness: dark === null ? null : { startUtc: isoUtc(dark.startUtcMs), endUtc: isoUtc(dark.endUtcMs) },
    bestUtc: isoUtc(best.utcMs),
    bestAltitudeDeg: rounded(best.altitudeDeg, 4),
    upInDarkness: dark !== null && bestTime(target.body, observer, dark).altitudeDeg > 0,
    moon: {
      separationDeg: rounded(moonSeparationDeg(target.body, observer, best.utcMs), 4),
      illuminatedFraction: rounded(moon.illuminatedFraction, 4),
      altitudeDeg: rounded(moon.place.altitudeDeg, 4),
    },
    sky: found.sky,
    marginMag: found.marginMag === null ? null : rounded(found.marginMag, 2),
    verdict: CONTRACT_VERDICT[found.verdict] ?? found.verdict,
    hindrance: found.verdict === 'up' ? null : found.verdict,
  };
};
