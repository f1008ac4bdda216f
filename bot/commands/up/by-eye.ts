/** Whether a star or planet shows without a telescope; what is spread out says so elsewhere. */
import { SHOWS_MAG } from '../../evening/ease.js';
import { isHandHeld, type Equipment } from '../../evening/equipment.js';
import type { Outlook } from '../../evening/outlook.js';
import { magnitudeText } from '../../reply/wording.js';
import type { TargetAtSite } from '../asking/question-parts.js';

interface Looked {
  readonly asked: TargetAtSite;
  readonly equipment: Equipment;
  readonly found: Outlook;
}

/** Null where a telescope is taken, or it is no point. */
export const byEyeWords = ({ asked: { target }, equipment, found }: Looked): string | null => {
  const isPoint = ['star', 'planet'].includes(target.kind);
  const { marginMag, magnitude } = found;
  if (!isHandHeld(equipment) || !isPoint || marginMag === null || magnitude === null) return null;
  const shows = marginMag >= SHOWS_MAG;
  const how = equipment.saidAs.replace(/^the /u, '');
  return `${shows ? 'Yes' : 'No'}, ${shows ? '' : 'not '}with ${how === 'naked eye' ? 'the naked eye' : how}: mag ${magnitudeText(magnitude)}.`;
};
