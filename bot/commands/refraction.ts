/** `refraction`: how far the air lifts what is seen at a height, and how much air is in the way. */
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { degrees, rounded } from '../reply/wording.js';
import { airmass } from '../sky/airmass.js';
import { airFactor, refractionAtApparentDeg, refractionDeg } from '../sky/refraction.js';
import { EXTINCTION_MAG_PER_AIRMASS } from '../sky/sky-brightness.js';
import { defineCommand, number, optional } from './core/command.js';

const USUAL_PRESSURE_HPA = 1010;
const USUAL_TEMPERATURE_C = 10;

const arcmin = (deg: number): string => `${(deg * 60).toFixed(1)}′`;
const plainNumber = (value: number): string => String(Number(value.toFixed(1))).replace('-', '−');

export const refraction = defineCommand({
  name: 'refraction',
  summary: 'How far does the air lift a star at a height, and how much does it dim it?',
  options: {
    height: number('How high it is seen, in degrees', { min: 0, max: 90 }),
    pressure: optional(
      number('Air pressure where you stand, in hPa or millibars (usual: 1010)', { min: 300, max: 1100 }),
    ),
    temperature: optional(number('Air temperature in °C (usual: 10)', { min: -60, max: 60 })),
  },
  examples: ['refraction 10', 'refraction height:35', 'refraction 12 temperature:5 pressure:1015'],
  run: (_, { options: { height, pressure, temperature } }): Promise<Outcome> => {
    const pressureHPa = pressure ?? USUAL_PRESSURE_HPA;
    const temperatureC = temperature ?? USUAL_TEMPERATURE_C;
    const factor = airFactor(pressureHPa, temperatureC);
    const liftDeg = refractionAtApparentDeg(height) * factor;
    const ofAirlessDeg = refractionDeg(height) * factor;
    const mass = airmass(height) ?? 1;
    const isUsual = pressure === undefined && temperature === undefined;
    const air = `${plainNumber(pressureHPa)} hPa and ${plainNumber(temperatureC)} °C`;
    const others = isUsual ? '; cold or dense air lifts by a few percent more, near the horizon by much more' : '';
    return Promise.resolve(
      reply({
        title: `Refraction at ${degrees(height, Number.isInteger(height) ? 0 : 1)}`,
        summary: `${isUsual ? 'The air' : `At ${air} the air`} lifts it by ${arcmin(liftDeg)}, and is ${mass.toFixed(mass < 10 ? 2 : 0)} times what is overhead: about ${((mass - 1) * EXTINCTION_MAG_PER_AIRMASS).toFixed(1)} mag dimmer.`,
        notes: [
          `${isUsual ? `For ${air}${others}. ` : ''}If ${degrees(height, Number.isInteger(height) ? 0 : 1)} is reckoned without air, ${arcmin(ofAirlessDeg)}.`,
        ],
        pointsAt: NOWHERE,
        data: { heightDeg: height, refractionArcmin: rounded(liftDeg * 60, 3), airmass: rounded(mass, 4) },
      }),
    );
  },
});
