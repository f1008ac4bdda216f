/** Where the pole star stands round the pole, as the hand of a clock seen when facing the pole. */
import { wrapHours24 } from '../../sky/angles.js';

/**
 * The star's place on a clock face, 0 ≤ h < 12 hours, 0 (that is 12 o'clock) straight above the pole. Facing north the sky
 * turns anticlockwise, facing south clockwise.
 * @param inverted as a polar telescope without an erecting prism shows it: turned by half a circle
 */
export const poleClockHours = (hourAngleHours: number, isSouthern: boolean, inverted: boolean): number => {
  const hand = (isSouthern ? hourAngleHours : -hourAngleHours) / 2 + (inverted ? 6 : 0);
  return wrapHours24(hand * 2) / 2;
};

/** "3:24", "12:05": to the nearest minute of the clock face. */
export const clockFaceText = (hours: number): string => {
  const minutes = Math.round(hours * 60) % 720;
  const hour = Math.floor(minutes / 60);
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, '0')}`;
};
