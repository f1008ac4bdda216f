/** What several nights are worth: how long each is dark without the Moon, and for a target how long it stands high enough then. */
import { leastAltitudeDegOf } from '../../evening/pick.js';
import type { Target } from '../../catalogue/index.js';
import { intervalsBelow } from '../../sky/crossings.js';
import { moonAt, moonlessDark } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import type { RiseTransitSet } from '../../sky/rise-set.js';
import { skyTrack } from '../../sky/sky-track.js';
import { twilights } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { nightOn, type NamedNight } from '../../times/index.js';
import { moonTimesOf, twilightSpan } from '../asking/night-words.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

export interface NightWorth {
  readonly night: NamedNight;
  /** Null where it does not get fully dark. */
  readonly dark: TimeSpan | null;
  /** The hours that count, in order. */
  readonly spans: readonly TimeSpan[];
  readonly totalMs: number;
  /** Of the target in them. */
  readonly best: { readonly utcMs: UtcMs; readonly altitudeDeg: number } | null;
  readonly moonTimes: RiseTransitSet;
  readonly moonLitFraction: number;
}

/** Of these moonlight takes next to nothing. */
const BRIGHT_KINDS: readonly string[] = ['planet', 'star', 'double-star', 'moon', 'asterism'];
export const mindsMoon = ({ kind }: Target): boolean => !BRIGHT_KINDS.includes(kind);

export const lengthOf = ({ startUtcMs, endUtcMs }: TimeSpan): number => endUtcMs - startUtcMs;

const STEP_MS = 600_000;

const bestIn = (altitudeDegAt: (utcMs: UtcMs) => number, spans: readonly TimeSpan[]): NightWorth['best'] => {
  let best: NightWorth['best'] = null;
  for (const { startUtcMs, endUtcMs } of spans)
    for (let utcMs = startUtcMs; utcMs <= endUtcMs; utcMs += STEP_MS) {
      const altitudeDeg = altitudeDegAt(utcMs);
      if (best === null || altitudeDeg > best.altitudeDeg) best = { utcMs, altitudeDeg };
    }
  return best;
};

/** Of the nights on these evenings, what is past left out; with `isMoonless` only the hours without the Moon count. */
export const nightsWorth = (
  { site }: ResolvedSite,
  dates: readonly NamedNight['date'][],
  { target, isMoonless }: { readonly target: Target | null; readonly isMoonless: boolean },
  nowUtcMs: UtcMs,
): readonly NightWorth[] => {
  const { observer } = site;
  const track = target === null ? null : skyTrack(target.body, observer);
  const leastDeg = target === null ? 0 : leastAltitudeDegOf(target.body);
  return dates.map((date) => {
    const night = nightOn(date, site);
    const { startUtcMs, endUtcMs } = night;
    const dark = twilightSpan(twilights(observer, startUtcMs, endUtcMs).astronomical, night);
    const wholeDark = dark === null ? [] : [dark];
    const free = isMoonless ? moonlessDark(observer, startUtcMs, endUtcMs) : wholeDark;
    const coming = free
      .map((span) => ({ ...span, startUtcMs: Math.max(span.startUtcMs, Math.min(nowUtcMs, span.endUtcMs)) }))
      .filter((span) => lengthOf(span) > 0);
    const spans =
      track === null
        ? coming
        : coming.flatMap((span) =>
            intervalsBelow((utcMs) => leastDeg - track.altitudeDegAt(utcMs), span.startUtcMs, span.endUtcMs),
          );
    return {
      night,
      dark,
      spans,
      totalMs: spans.reduce((sum, span) => sum + lengthOf(span), 0),
      best: track === null ? null : bestIn(track.altitudeDegAt, spans),
      moonTimes: moonTimesOf(observer, night),
      moonLitFraction: moonAt(observer, (startUtcMs + endUtcMs) / 2).illuminatedFraction,
    };
  });
};
