/** `refraction`: how far the air lifts what is seen at a height, and how much air is in the way. */
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { degrees, rounded } from '../reply/wording.js';
import { airmass } from '../sky/airmass.js';
import { refractionAtApparentDeg, refractionDeg } from '../sky/refraction.js';
import { EXTINCTION_MAG_PER_AIRMASS } from '../sky/sky-brightness.js';
import { defineCommand, number } from './core/command.js';

export const refraction = defineCommand({
  name: 'refraction',
  summary: 'How far does the air lift a star at a height, and how much does it dim it?',
  options: {
    height: number('How high it is seen, in degrees', { min: 0, max: 90 }),
  },
  examples: ['refraction 10', 'refraction height:35'],
  run: (_, { options: { height } }): Promise<Outcome> => {
    const liftDeg = refractionAtApparentDeg(height);
    const ofAirlessDeg = refractionDeg(height);
    const mass = airmass(height) ?? 1;
    return Promise.resolve(
      reply({
        title: `Refraction at ${degrees(height, Number.isInteger(height) ? 0 : 1)}`,
        summary: `The air lifts it by ${arcmin(liftDeg)}, and is ${mass.toFixed(mass < 10 ? 2 : 0)} times what is overhead: about ${((mass - 1) * EXTINCTION_MAG_PER_AIRMASS).toFixed(1)} mag dimmer.`,
        notes: [
          `For 1010 hPa and 10 °C; cold or dense air lifts by a few percent more, near the horizon by much more. If ${degrees(height)} is reckoned without air, ${arcmin(ofAirlessDeg)}.`,
        ],
        pointsAt: NOWHERE,
        data: { heightDeg: height, refractionArcmin: rounded(liftDeg * 60, 3), airmass: rounded(mass, 4) },
      }),
    );
  },
});

const arcmin = (deg: number): string => `${(deg * 60).toFixed(1)}′`;
