/** The volts and amps of a supply beside those that the mount asks for, as figures: "label 12 V 5 A, mount wants 12 V 3 A". Pure. */

const OF_SUPPLY =
  /\b(?:supply|psu|brick|charger|adapt[eo]r|battery|pack|power ?box|plug ?top|label|sticker|mine|it (?:gives|has|says|is)|i (?:have|use|got))\b/iu;
const OF_MOUNT = /\b(?:mount|scope|telescope|wants?|asks?|asked|needs?|manual|sheet|required|requires?|demands?)\b/iu;
const BREATHS = /[;,.](?!\d)|\n|\b(?:and|but|while|against|vs|versus)\b/iu;
const VOLTS = /(\d+(?:[.,]\d+)?) ?v(?:olts?|dc)?\b/giu;
const AMPS = /(\d+(?:[.,]\d+)?) ?(?<milli>m)?a(?:mps?|mperes?)?\b/giu;

interface Figures {
  readonly volts: readonly number[];
  readonly amps: readonly number[];
}

const figuresIn = (words: string): Figures => ({
  volts: [...words.matchAll(VOLTS)].map(([, figure = '']) => Number(figure.replace(',', '.'))),
  amps: [...words.matchAll(AMPS)].map(
    ([, figure = '', milli]) => Number(figure.replace(',', '.')) / (milli === undefined ? 1 : 1000),
  ),
});

const joined = (one: Figures, other: Figures): Figures => ({
  volts: [...one.volts, ...other.volts],
  amps: [...one.amps, ...other.amps],
});

const NONE: Figures = { volts: [], amps: [] };

/** Each breath is of one of the two, or of the one before it; null where it is of both. */
const byOwner = (text: string): { readonly supply: Figures; readonly mount: Figures } | null => {
  let owner: 'supply' | 'mount' | null = null;
  const told = { supply: NONE, mount: NONE };
  for (const breath of text.split(BREATHS)) {
    const [ofSupply, ofMount] = [OF_SUPPLY.test(breath), OF_MOUNT.test(breath)];
    const own = figuresIn(breath);
    const tells = own.volts.length + own.amps.length > 0;
    if (tells && ofSupply && ofMount) return null;
    if (ofSupply !== ofMount) owner = ofMount ? 'mount' : 'supply';
    if (!tells) continue;
    if (owner === null) return null;
    told[owner] = joined(told[owner], own);
  }
  return told;
};

/** @returns the answer of `supply-amps` that the figures make; null where one of the four is not told, or they leave it open */
export const supplyFigures = (text: string): 'enough' | 'too-few' | 'other-volts' | null => {
  const told = byOwner(text);
  if (told === null) return null;
  const { supply, mount } = told;
  const [volts, second] = supply.volts;
  const [amps, more] = supply.amps;
  if (volts === undefined || second !== undefined || mount.volts.length === 0) return null;
  // "12 to 15 V" is a range.
  if (volts < Math.min(...mount.volts) || volts > Math.max(...mount.volts)) return 'other-volts';
  if (amps === undefined || more !== undefined || mount.amps.length !== 1) return null;
  return amps >= (mount.amps[0] ?? 0) ? 'enough' : 'too-few';
};
