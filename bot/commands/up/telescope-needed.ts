/** Whether it takes a telescope, binoculars or neither, by its magnitude alone; of doubles `split-words.ts` tells. */
import type { Target } from '../../catalogue/index.js';
import { tableOf } from '../../ground/table-of.js';
import { magnitudeText } from '../../reply/wording.js';

/** The naked eye's limit under street lamps and in a dark sky, and that of binoculars; common practice, no source. */
export const EYE_MAG = { anywhere: 4, dark: 6 } as const;
export const BINOCULAR_MAG = 9;

/** What a telescope adds; common practice, no source. */
const MORE = tableOf({
  Saturn: ' Its rings want a telescope, 25 times or more.',
  Jupiter: ' Steady binoculars show its moons; its belts want a telescope.',
  Venus: ' Its phase wants steady binoculars or a telescope.',
  Mars: ' Its disc wants a telescope, 100 times or more.',
});

const needed = (name: string, magnitude: number): string => {
  const mag = `mag ${magnitudeText(magnitude)}`;
  if (magnitude <= EYE_MAG.anywhere) return `No: ${name} is plain to the naked eye, ${mag}.`;
  if (magnitude <= EYE_MAG.dark) return `No, in a dark sky: the naked eye does there, ${mag}; binoculars are surer.`;
  return magnitude <= BINOCULAR_MAG
    ? `Binoculars do in a dark sky, ${mag}; a telescope shows more.`
    : `Yes: ${mag} is for a telescope.`;
};

/** @param magnitude at that instant; null: none is known */
export const telescopeNeeded = ({ name, kind }: Target, magnitude: number | null): string | null => {
  if (kind === 'moon') return 'No: the Moon is plain to bare eyes, and binoculars show its craters.';
  return magnitude === null ? null : `${needed(name, magnitude)}${MORE.get(name) ?? ''}`;
};
