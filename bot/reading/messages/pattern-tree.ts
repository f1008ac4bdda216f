/** A pattern taken apart into a tree. Knows the part of RE2 syntax that patterns here use; says where a pattern uses more. */

export interface Repeat {
  readonly least: number;
  readonly most: number;
  /** As written: "?", "{0,40}", "" … */
  readonly raw: string;
}

/** One character or place, as written. */
export interface Sign {
  readonly kind: 'sign';
  readonly raw: string;
  /** The character it stands for, where it is exactly one. */
  readonly literal: string | null;
  /** A place (`\b`, `^`, `$`), not a character. */
  readonly place: boolean;
}

export interface Group {
  readonly kind: 'group';
  /** "(" or "(?:". */
  readonly open: string;
  readonly options: readonly Sequence[];
}

export interface Item {
  readonly node: Sign | Group;
  readonly repeat: Repeat;
}
export type Sequence = readonly Item[];

export interface PatternTree {
  readonly options: readonly Sequence[];
  /** All of it is syntax that RE2 and JavaScript read alike. */
  readonly plain: boolean;
}

/** What an unbounded repeat is taken as: no word of a message is longer. */
export const ENDLESS = 80;

interface Cursor {
  readonly text: string;
  at: number;
  plain: boolean;
}
const peek = (cursor: Cursor): string | undefined => cursor.text[cursor.at];
const take = (cursor: Cursor): string => {
  const char = cursor.text[cursor.at] ?? '';
  cursor.at += 1;
  return char;
};

const readClass = (cursor: Cursor): Sign => {
  let raw = take(cursor);
  while (peek(cursor) !== undefined && peek(cursor) !== ']') {
    if (peek(cursor) === '\\') raw += take(cursor);
    else if (peek(cursor) === '[') cursor.plain = false;
    raw += take(cursor);
  }
  return { kind: 'sign', raw: raw + take(cursor), literal: null, place: false };
};

const readEscape = (cursor: Cursor): Sign => {
  take(cursor);
  const char = take(cursor);
  const isNamed = /[a-z\d]/iu.test(char);
  if (isNamed && !/[bdswBDSW]/u.test(char)) cursor.plain = false;
  return { kind: 'sign', raw: `\\${char}`, literal: isNamed ? null : char, place: char === 'b' || char === 'B' };
};

const readGroup = (cursor: Cursor): Group => {
  let open = take(cursor);
  if (peek(cursor) === '?') while (!/[:)]$/u.test(open) && peek(cursor) !== undefined) open += take(cursor);
  if (open !== '(' && open !== '(?:') cursor.plain = false;
  const options = readOptions(cursor);
  if (take(cursor) !== ')') cursor.plain = false;
  return { kind: 'group', open, options };
};

const readNode = (cursor: Cursor): Sign | Group => {
  const char = peek(cursor);
  if (char === '(') return readGroup(cursor);
  if (char === '[') return readClass(cursor);
  if (char === '\\') return readEscape(cursor);
  const raw = take(cursor);
  const place = raw === '^' || raw === '$';
  return { kind: 'sign', raw, literal: place || raw === '.' ? null : raw, place };
};

const readRepeat = (cursor: Cursor): Repeat => {
  const rest = cursor.text.slice(cursor.at, cursor.at + 12);
  const raw = /^(?:[?*+]|\{\d+(?:,\d*)?\})\??/u.exec(rest)?.[0] ?? '';
  cursor.at += raw.length;
  if (raw === '') return { least: 1, most: 1, raw };
  if (raw.startsWith('?')) return { least: 0, most: 1, raw };
  if (!raw.startsWith('{')) return { least: raw.startsWith('*') ? 0 : 1, most: ENDLESS, raw };
  const [, least = '0', comma, most = ''] = /^\{(\d+)(,?)(\d*)/u.exec(raw) ?? [];
  if (comma === '') return { least: Number(least), most: Number(least), raw };
  return { least: Number(least), most: most === '' ? Number(least) + ENDLESS : Number(most), raw };
};

const readSequence = (cursor: Cursor): Sequence => {
  const items: Item[] = [];
  while (peek(cursor) !== undefined && peek(cursor) !== '|' && peek(cursor) !== ')') {
    const node = readNode(cursor);
    items.push({ node, repeat: readRepeat(cursor) });
  }
  return items;
};

const readOptions = (cursor: Cursor): readonly Sequence[] => {
  const options = [readSequence(cursor)];
  while (peek(cursor) === '|') {
    take(cursor);
    options.push(readSequence(cursor));
  }
  return options;
};

export const patternTree = (pattern: string): PatternTree => {
  const cursor: Cursor = { text: pattern, at: 0, plain: true };
  const options = readOptions(cursor);
  return { options, plain: cursor.plain && cursor.at >= pattern.length };
};

/** The pattern written again, each sign and repeat as `sign` and `repeat` put it. */
export const writeTree = (
  options: readonly Sequence[],
  sign: (own: Sign) => string,
  repeat: (own: Repeat, written: string) => string,
): string =>
  options
    .map((items) =>
      items
        .map((item) => {
          const { node } = item;
          const written = node.kind === 'sign' ? sign(node) : `${node.open}${writeTree(node.options, sign, repeat)})`;
          return repeat(item.repeat, written);
        })
        .join(''),
    )
    .join('|');
