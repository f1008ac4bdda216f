/** Which doubles a power splits. */
import type { Asked } from './asked.js';

/** What an eye wants between two points at the eyepiece to see them apart at ease; common practice, no source. */
const EYE_ARCSEC = 240;
const powerIn = (plain: string): number => Number(/\b(\d{2,3}) ?(?:x|×|times)\b(?! ?\d)/u.exec(plain)?.[1] ?? 0);

/** "Albireo at 40x": what that power asks of a pair. */
export const powerNote = (plain: string): string | null => {
  const power = powerIn(plain);
  return power < 20
    ? null
    : `At ${power}x an eye splits what is ${(EYE_ARCSEC / power).toFixed(1)}″ apart or more, in steady air: 240″ over the power.`;
};

/** "Doubles at 150x": what that power splits. */
export const splitAtPower = ({
  kind,
  plain,
}: Pick<Asked, 'kind' | 'plain'>): { readonly leastArcsec: string; readonly words: string } | null => {
  const power = powerIn(plain);
  if (power < 20 || kind === null || !/doubl|binar/u.test(kind)) return null;
  const leastArcsec = (EYE_ARCSEC / power).toFixed(1);
  return {
    leastArcsec,
    words: `At ${power}x an eye splits what is ${leastArcsec}″ apart or more, in steady air: 240″ over the power. Those listed are wider.`,
  };
};
