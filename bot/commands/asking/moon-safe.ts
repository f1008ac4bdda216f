/** Whether the Moon harms an eye: it does not, and whoever asks is not to be told of the Sun. */
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';

const MOON = /\b(?:moon|lunar)\b/u;
const ASKS =
  /\b(?:safe|safely|danger\w*|harm\w*|hurts?|damag\w*|blind\w*|burn\w*|eyes?|eyesight|dazzl\w*)\b|\bsun ?glasses\b|\beclipse glasses\b|\bwithout (?:a |any |my |the )?(?:moon )?filter\b/u;
/** By day, or thin beside the Sun, it is another question, and so is what the mount does. */
const OTHERS =
  /\b(?:sun(?! ?glasses)|solar|sunspots?|day|day ?time|day ?light|noon|morning|afternoon|sun ?set|sun ?rise|thin|young|old|crescent|new moon|slew\w*|go ?to|naked eye|by eye|earth ?shine|crater\w*|which|what|when|where)\b/u;
const OF_THE_SUN = /\b(?:partial|annular|total(?:ity)?)\b(?!.*\b(?:lunar|moon)\b)/u;

/** @param plain in lower case; null: it is not asked */
export const moonSafe = (plain: string): Outcome | null =>
  MOON.test(plain) && ASKS.test(plain) && !OTHERS.test(plain) && !OF_THE_SUN.test(plain)
    ? reply({
        title: 'The Moon and eyes',
        summary:
          'The Moon is safe to look at, full or eclipsed, by eye and in any telescope. Near full it dazzles: higher power, a grey filter at the eyepiece, or a lamp left on beside you help. Only the Sun harms, so never sweep about by day.',
        choices: [{ label: 'The Moon tonight', run: 'up Moon' }],
        pointsAt: NOWHERE,
      })
    : null;
