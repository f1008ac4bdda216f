/** What a planet shows at its best hour, and how large: phase, rings, moons, bands. */
import type { Target } from '../../catalogue/index.js';
import type { Equipment } from '../../evening/equipment.js';
import type { Outlook } from '../../evening/outlook.js';
import { planetWords } from '../../evening/planet-words.js';
import type { Fact } from '../../reply/reply.js';
import { planetLook } from '../../sky/planet-look.js';

/** "rings, tilted 6°; Titan; 19″ across". Nothing for what is no planet or cannot be seen this night. */
export const planetShows = ({ body }: Target, { verdict, best }: Outlook, equipment: Equipment): readonly Fact[] => {
  const look = body.kind === 'solarSystem' ? planetLook(body.body, best.utcMs) : null;
  if (body.kind !== 'solarSystem' || look === null || ['never-up', 'lost-in-sun'].includes(verdict)) return [];
  const shown = planetWords(body.body, best.utcMs, equipment);
  const across = look.diameterArcsec.toFixed(look.diameterArcsec < 10 ? 1 : 0);
  const size = shown?.includes('″') === true ? null : `${across}″ across`;
  return [{ label: 'Shows', value: [shown, size].filter((part) => part !== null).join('; ') }];
};
