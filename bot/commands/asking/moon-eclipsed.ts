/** The Moon's eclipse that is on, or comes within hours: a bitten or a red Moon is then asked of it. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { isNoticed, lunarEclipses } from '../../sky/eclipses.js';
import type { Known, Reading } from './sentence/asked.js';

/** "Tonight" is told of the eclipse that comes within so long. */
const SOON_MS = 18 * MS_PER_HOUR;

/** One that anybody notices. */
export const isMoonEclipsedSoon = ({ usual, nowUtcMs }: Known): boolean => {
  if (usual == null) return false;
  const span = { startUtcMs: nowUtcMs - SOON_MS, endUtcMs: nowUtcMs + SOON_MS };
  return lunarEclipses({ ...usual, elevationM: 0 }, span).some(isNoticed);
};

const MOON = '(?:the )?moon';
const LOOKS_EATEN = new RegExp(
  [
    `\\b(?:bite|chunk|piece|bit|part|half|shadow|dent)\\b.*\\b(?:out of|off|missing|gone|on|over|across|of) ${MOON}\\b`,
    `\\b${MOON}\\b.*\\b(?:red|orange|copper\\w*|blood\\w*|brown|dark(?:er|ening)?|dim(?:mer|ming)?|bitten|eaten|half gone|missing|disappear\\w*|covered|shadow|funny|weird|strange|wrong|odd)\\b`,
    `\\b(?:red|orange|blood|copper\\w*|dark|half|bitten|eaten) ${MOON}\\b`,
    `\\b(?:what(?: is|s)?|whats) (?:going on|happening|wrong|up) with ${MOON}\\b`,
  ].join('|'),
  'u',
);

/** @param plain in lower case; null: no eclipse is near, or it is not asked of the Moon's looks */
export const moonEclipsed = (plain: string, known: Known): Reading | null =>
  LOOKS_EATEN.test(plain) && isMoonEclipsedSoon(known)
    ? { line: 'ahead eclipses about:Moon first:next', usesAll: true }
    : null;
