/** Words with a form of a thing rather than a meaning. */
const SHAPES: readonly (readonly [string, RegExp])[] = [
  ['com-port', /^com\d{1,3}$/u],
  ['number', /^\d+(?:[.,]\d+)?$/u],
  ['clock-time', /^\d{1,2}:\d{2}$/u],
  ['device-file', /^(?:\/dev\/|tty(?:usb|acm)\d)/u],
  ['address', /^\d{1,3}(?:\.\d{1,3}){2}\.(?:\d{1,3}|x)$/u],
];

export const SHAPE_IDS: readonly string[] = SHAPES.map(([id]) => id);

export const shapesOf = (word: string): readonly string[] =>
  /^[\d/ct]/u.test(word) ? SHAPES.filter(([, form]) => form.test(word)).map(([id]) => id) : [];
