/** What a file is by its first bytes, and how large the picture in it would be, without decoding any of it. */

export interface PictureHeader {
  readonly kind: 'png' | 'jpeg' | 'webp';
  readonly widthPx: number;
  readonly heightPx: number;
}

const startsWith = (bytes: Uint8Array, at: number, text: string): boolean =>
  bytes.length >= at + text.length && Array.from(text).every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** PNG (ISO/IEC 15948), section 11.2.2: the first chunk is IHDR, width and height its first eight bytes. */
const pngSize = (bytes: Uint8Array): PictureHeader | null =>
  bytes.length >= 24 && startsWith(bytes, 12, 'IHDR')
    ? { kind: 'png', widthPx: view(bytes).getUint32(16), heightPx: view(bytes).getUint32(20) }
    : null;

/** The start-of-frame markers of ITU-T T.81, table B.1: C0 to CF without C4 (tables), C8 (reserved) and CC (conditioning). */
const isFrameStart = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const jpegSize = (bytes: Uint8Array): PictureHeader | null => {
  const data = view(bytes);
  let at = 2;
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    // Fill bytes may stand before a marker.
    if (marker === 0xff) {
      at++;
    } else if (isFrameStart(marker)) {
      return { kind: 'jpeg', widthPx: data.getUint16(at + 7), heightPx: data.getUint16(at + 5) };
    } else {
      at += 2 + data.getUint16(at + 2);
    }
  }
  return null;
};

const uint24 = (bytes: Uint8Array, at: number): number =>
  (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8) | ((bytes[at + 2] ?? 0) << 16);

/** WebP by RFC 9649: simple lossy (VP8, RFC 6386 section 9.1), lossless (VP8L) and extended (VP8X). */
const webpSize = (bytes: Uint8Array): PictureHeader | null => {
  if (bytes.length < 30) return null;
  const data = view(bytes);
  if (startsWith(bytes, 12, 'VP8 ')) {
    return { kind: 'webp', widthPx: data.getUint16(26, true) & 0x3fff, heightPx: data.getUint16(28, true) & 0x3fff };
  }
  if (startsWith(bytes, 12, 'VP8L')) {
    const bits = data.getUint32(21, true);
    return { kind: 'webp', widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (startsWith(bytes, 12, 'VP8X')) {
    return { kind: 'webp', widthPx: uint24(bytes, 24) + 1, heightPx: uint24(bytes, 27) + 1 };
  }
  return null;
};

/** Null where the bytes are no PNG, JPEG or WebP picture, or break off before they say how large it is. */
export const pictureHeader = (bytes: Uint8Array): PictureHeader | null => {
  if (bytes[0] === 0x89 && startsWith(bytes, 1, 'PNG')) return pngSize(bytes);
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpegSize(bytes);
  if (startsWith(bytes, 0, 'RIFF') && startsWith(bytes, 8, 'WEBP')) return webpSize(bytes);
  return null;
};
