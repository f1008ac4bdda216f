/** The offsets from UTC that zones really have, and how easily each is typed in place of the right one. */

/** In minutes, east positive (IANA time zone database, zones in use after 2000). */
const REAL_UTC_OFFSETS_MINUTES: readonly number[] = [
  -720, -660, -600, -570, -540, -480, -420, -360, -300, -240, -210, -180, -150, -120, -60, 0, 60, 120, 180, 210, 240,
  270, 300, 330, 345, 360, 390, 420, 480, 525, 540, 570, 600, 630, 660, 690, 720, 765, 780, 840,
];

/**
 * How easily an offset is entered in place of the right one: the factory's zero, the neighbour, the half hour dropped.
 * Common practice, no source.
 */
export const offsetWeight = (enteredMinutes: number, rightMinutes: number): number => {
  const awayMinutes = Math.abs(enteredMinutes - rightMinutes);
  if (enteredMinutes === 0) return 4;
  if (awayMinutes === 60) return 3;
  if (awayMinutes < 60) return rightMinutes % 60 === 0 ? 0.3 : 3;
  if (enteredMinutes % 60 !== 0) return 0.1;
  return awayMinutes <= 180 ? 1 : 0.4;
};

/** What may be typed in place of an offset: those of other zones, and the right one with its hours alone wrong. */
export const typedOffsets = (rightMinutes: number): readonly number[] => [
  ...new Set([
    ...REAL_UTC_OFFSETS_MINUTES,
    ...Array.from({ length: 24 }, (_, i) => rightMinutes + (i - 12) * 60).filter((minutes) => Math.abs(minutes) <= 840),
  ]),
];
