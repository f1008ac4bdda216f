/** Eclipses of the Sun and the Moon as one observer has them. */
import {
  NextLunarEclipse,
  Observer as EngineObserver,
  SearchGlobalSolarEclipse,
  SearchLocalSolarEclipse,
  SearchLunarEclipse,
  NextGlobalSolarEclipse,
} from 'astronomy-engine';
import type { AstroTime, LunarEclipseInfo } from 'astronomy-engine';
import { MS_PER_DAY, MS_PER_MINUTE } from '../ground/durations.js';
import { engineTime } from './engine-time.js';
import { MOON } from './moon.js';
import type { TimeSpan } from './night.js';
import { horizontalOf } from './place.js';
import { SUN } from './twilight.js';
import type { Observer, UtcMs } from './types.js';

export interface Eclipse {
  readonly of: 'Sun' | 'Moon';
  /** As it is here for the Sun; for the Moon the same everywhere. */
  readonly kind: 'penumbral' | 'partial' | 'annular' | 'total';
  /** Most of the disc's area that is covered, 0..1 (of the Moon: by the umbra). */
  readonly coveredFraction: number;
  /** Partial phase, or the penumbral one where there is no other. */
  readonly span: TimeSpan;
  /** Totality, or the ring; null where there is none. */
  readonly wholeSpan: TimeSpan | null;
  readonly greatestUtcMs: UtcMs;
  /** Of the Sun or the Moon at the greatest phase, airless. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  /** Whether any of it happens above the horizon here. */
  readonly isSeen: boolean;
}

/** Nobody goes out for the outer shadow alone. */
export const isNoticed = ({ kind }: Eclipse): boolean => kind !== 'penumbral';

const utcMsOf = (time: AstroTime): UtcMs => time.date.getTime();
const around = (middle: UtcMs, halfMinutes: number): TimeSpan => ({
  startUtcMs: middle - halfMinutes * MS_PER_MINUTE,
  endUtcMs: middle + halfMinutes * MS_PER_MINUTE,
});

const lunarKind = (kind: string): Eclipse['kind'] => {
  if (kind === 'total') return 'total';
  return kind === 'partial' ? 'partial' : 'penumbral';
};

const lunarEclipse = (info: LunarEclipseInfo, observer: Observer): Eclipse => {
  const greatestUtcMs = utcMsOf(info.peak);
  const span = around(greatestUtcMs, info.sd_partial > 0 ? info.sd_partial : info.sd_penum);
  const up = (utcMs: UtcMs): boolean => horizontalOf(MOON, observer, utcMs).altitudeDeg > 0;
  const { altitudeDeg, azimuthDeg } = horizontalOf(MOON, observer, greatestUtcMs);
  return {
    of: 'Moon',
    kind: lunarKind(info.kind),
    coveredFraction: info.obscuration,
    span,
    wholeSpan: info.sd_total > 0 ? around(greatestUtcMs, info.sd_total) : null,
    greatestUtcMs,
    altitudeDeg,
    azimuthDeg,
    isSeen: up(span.startUtcMs) || altitudeDeg > 0 || up(span.endUtcMs),
  };
};

/** Lunar eclipses whose greatest phase is within the span, in order. */
export const lunarEclipses = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): readonly Eclipse[] => {
  const found: Eclipse[] = [];
  let info = SearchLunarEclipse(engineTime(startUtcMs));
  while (utcMsOf(info.peak) < endUtcMs) {
    found.push(lunarEclipse(info, observer));
    info = NextLunarEclipse(info.peak);
  }
  return found;
};

const localSolarEclipse = (observer: Observer, peakUtcMs: UtcMs): Eclipse | null => {
  const here = new EngineObserver(observer.latitudeDeg, observer.longitudeDeg, observer.elevationM);
  const info = SearchLocalSolarEclipse(engineTime(peakUtcMs - MS_PER_DAY), here);
  const greatestUtcMs = utcMsOf(info.peak.time);
  if (Math.abs(greatestUtcMs - peakUtcMs) > MS_PER_DAY) return null;
  const { altitudeDeg, azimuthDeg } = horizontalOf(SUN, observer, greatestUtcMs);
  return {
    of: 'Sun',
    kind: info.kind as Eclipse['kind'],
    coveredFraction: info.obscuration,
    span: { startUtcMs: utcMsOf(info.partial_begin.time), endUtcMs: utcMsOf(info.partial_end.time) },
    wholeSpan:
      info.total_begin === undefined || info.total_end === undefined
        ? null
        : { startUtcMs: utcMsOf(info.total_begin.time), endUtcMs: utcMsOf(info.total_end.time) },
    greatestUtcMs,
    altitudeDeg,
    azimuthDeg,
    isSeen: [info.partial_begin, info.peak, info.partial_end].some(({ altitude }) => altitude > 0),
  };
};

/** Solar eclipses that reach this place within the span, in order; those that do not are left out. */
export const solarEclipses = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): readonly Eclipse[] => {
  const found: Eclipse[] = [];
  let global = SearchGlobalSolarEclipse(engineTime(startUtcMs));
  while (utcMsOf(global.peak) < endUtcMs) {
    const local = localSolarEclipse(observer, utcMsOf(global.peak));
    if (local?.isSeen === true) found.push(local);
    global = NextGlobalSolarEclipse(global.peak);
  }
  return found;
};

/** The next of either body anywhere on Earth; the Moon's are seen by half of it, the Sun's by few. */
export const nextEclipseAnywhere = (fromUtcMs: UtcMs): Pick<Eclipse, 'of' | 'kind'> & { readonly utcMs: UtcMs } => {
  const moon = SearchLunarEclipse(engineTime(fromUtcMs));
  const sun = SearchGlobalSolarEclipse(engineTime(fromUtcMs));
  return utcMsOf(moon.peak) < utcMsOf(sun.peak)
    ? { of: 'Moon', kind: lunarKind(moon.kind), utcMs: utcMsOf(moon.peak) }
    : { of: 'Sun', kind: sun.kind, utcMs: utcMsOf(sun.peak) };
};
