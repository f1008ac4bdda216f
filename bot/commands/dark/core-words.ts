/** The season of the Milky Way's core, as `dark` says it first. */
import { coreSeason } from '../../evening/milky-way-core.js';
import { degrees } from '../../reply/wording.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalDate } from '../../times/index.js';

export const coreWords = (observer: Observer, zone: string, nowUtcMs: UtcMs): string => {
  const season = coreSeason(observer, nowUtcMs);
  const about = (utcMs: UtcMs): string => `about ${formatLocalDate(utcMs, zone).replace(/^\w+ /u, '')}`;
  if (season === null) return 'The core of the Milky Way, in Sagittarius, never stands clear of the horizon here';
  const { highestDeg, isNow, beginsUtcMs, endsUtcMs } = season;
  const high = `it stands ${degrees(highestDeg)} high here at its highest`;
  if (isNow)
    return `The core of the Milky Way, in Sagittarius, is in the dark hours now${endsUtcMs === null ? '' : `, until ${about(endsUtcMs)}`}; ${high}`;
  if (beginsUtcMs === null)
    return `The core of the Milky Way, in Sagittarius, does not come into the dark here within a year; ${high}`;
  return `The core of the Milky Way, in Sagittarius, is back before dawn from ${about(beginsUtcMs)}${endsUtcMs === null ? '' : `, and in the dark until ${about(endsUtcMs)}`}; ${high}`;
};
