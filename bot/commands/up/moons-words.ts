/**
 * Which moons of a planet show, and in what. Magnitudes at a mean opposition: Titan 8.4, Rhea 9.7, Tethys 10.3, Dione 10.4, Iapetus 10.2 to
 * 11.9, Phobos 11.4, Deimos 12.5, Titania 13.9, Oberon 14.1, Triton 13.5 (from memory; apertures are common practice, no source).
 */
import { tableOf } from '../../ground/table-of.js';

const MOONS = tableOf({
  Mercury: 'Mercury has no moon.',
  Venus: 'Venus has no moon.',
  Mars: 'Its two, Phobos and Deimos (mag 11 and 12), drown in the glare of Mars: hardly ever seen, and in large telescopes alone.',
  Jupiter: 'Its four bright ones show in binoculars; for where each stands ask: moons.',
  Saturn:
    'Titan (mag 8.4) shows beside it in a small telescope; Rhea (9.7) in 100 mm; Tethys, Dione (10.4) and at times Iapetus in 150 to 200 mm. Where each stands I do not reckon.',
  Uranus: 'Its brightest, Titania and Oberon (mag 14), want 300 mm or more and a dark sky.',
  Neptune: 'Triton (mag 13.5) wants 250 mm or more and a dark sky; the rest are out of reach.',
});

/** Null for what has none to speak of. */
export const moonsWords = (name: string): string | null => MOONS.get(name) ?? null;
