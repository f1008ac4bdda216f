/** A camera's pixels as they are told, and how much sky one takes. */
import { ARCSEC_PER_RADIAN } from '../../sky/angles.js';

/** "3.76 µm": its size in micrometres. */
export const PIXEL = /(?<![\d.])(\d{1,2}(?:\.\d+)?) ?(?:um|µm|μm|microns?|micrometers?|micrometres?)\b/u;
/** Of a common camera; common practice, no source. */
export const USUAL_PIXEL_UM = 4;

/** Arcseconds. */
export const pixelArcsec = (pixelUm: number, focalMm: number): number =>
  (ARCSEC_PER_RADIAN * pixelUm) / (focalMm * 1000);
