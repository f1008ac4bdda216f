/** Makes a picture easy to read for the character recogniser: grey, dark on light, letters large enough. Runs in the reader's own process. */
import { renderAsync } from '@resvg/resvg-js';
import type { PictureHeader } from './picture-header.js';

/** Recognition wants letters some 30 pixels high; screens draw them 10 to 16 high (common practice, no source). */
const ENLARGED = 3;
/** Beyond this many pixels enlarging costs more seconds than it gains letters. */
const MOST_PIXELS = 6_000_000;
const LOOK_PX = 64;

const MEDIA_TYPE = { png: 'image/png', jpeg: 'image/jpeg' } as const;

const INVERTED = '<feColorMatrix type="matrix" values="-1 0 0 0 1 0 -1 0 0 1 0 0 -1 0 1 0 0 0 1 0"/>';

/** What the drawing library decodes. */
type Decodable = PictureHeader & { readonly kind: 'png' | 'jpeg' };

const drawing = (bytes: Uint8Array, { kind, widthPx, heightPx }: Decodable, isDark: boolean): string => `<svg
  xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${widthPx}" height="${heightPx}">
  <filter id="grey" x="0" y="0" width="1" height="1" color-interpolation-filters="sRGB">
    <feColorMatrix type="saturate" values="0"/>${isDark ? INVERTED : ''}
  </filter>
  <rect width="${widthPx}" height="${heightPx}" fill="white"/>
  <image width="${widthPx}" height="${heightPx}" filter="url(#grey)"
    xlink:href="data:${MEDIA_TYPE[kind]};base64,${Buffer.from(bytes).toString('base64')}"/>
</svg>`;

const render = (svg: string, zoom: number) =>
  renderAsync(svg, { fitTo: { mode: 'zoom', value: zoom }, font: { loadSystemFonts: false } });

/** Whether most of the picture is dark, from a thumbnail of it. */
const isMostlyDark = async (svg: string, { widthPx, heightPx }: PictureHeader): Promise<boolean> => {
  const { pixels } = await render(svg, LOOK_PX / Math.max(widthPx, heightPx));
  let sum = 0;
  for (let i = 0; i < pixels.length; i += 4) sum += pixels[i]!;
  return sum / (pixels.length / 4) < 128;
};

/** A PNG of the same picture. Rejects where the bytes are no PNG or JPEG, or cannot be decoded. */
export const preparePicture = async (bytes: Uint8Array, { kind, ...size }: PictureHeader): Promise<Buffer> => {
  if (kind === 'webp') throw new RangeError('WebP cannot be drawn here.');
  const header = { kind, ...size };
  const isDark = await isMostlyDark(drawing(bytes, header, false), header);
  const zoom = Math.min(ENLARGED, Math.sqrt(MOST_PIXELS / (header.widthPx * header.heightPx)));
  return (await render(drawing(bytes, header, isDark), zoom)).asPng();
};
