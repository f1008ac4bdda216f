/** The two numbers on a tube, "130/650": aperture and focal length, and what follows from them. */
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';

const NUMBERS = /(?<![\d./])(\d{2,3}) ?(?:\/|mm f|f) ?(\d{3,4})(?![\d./])/u;
const ASKS =
  /\b(?:what|mean\w*|stand\w* for|number|numbers|telescope|scope|tube|refractor|reflector|newtonian|eyepiece)\b/u;
const EYEPIECES_MM = [25, 10] as const;

/** Null where no such numbers stand, or they are of something else. */
export const tubeNumbers = (plain: string): Outcome | null => {
  const [, aperture = '', focal = ''] = NUMBERS.exec(plain) ?? [];
  const apertureMm = Number(aperture);
  const focalMm = Number(focal);
  const ratio = focalMm / apertureMm;
  if (focal === '' || ratio < 2.5 || ratio > 20 || !ASKS.test(plain)) return null;
  const powers = EYEPIECES_MM.map((mm) => `a ${mm} mm eyepiece ${Math.round(focalMm / mm)}×`);
  return reply({
    title: `${aperture}/${focal}`,
    summary: `${aperture} mm is the aperture, ${focal} mm the focal length: f/${Number(ratio.toFixed(1))}. The eyepieces' focal lengths give the power: ${powers.join(', ')}; ${2 * apertureMm}× is about the most that shows anything.`,
    choices: [{ label: 'What it shows tonight', run: `tonight with:${aperture}` }],
    pointsAt: NOWHERE,
  });
};
