/** Which of Bluetooth's two ports a member says the program uses: "es gibt COM5 eingehend und COM6 ausgehend, im Programm steht COM5". */
import type { ReadFact, Reading } from '../../reading/index.js';
import { quotedFrom } from './with-fact.js';

const BT_PORT = 'bt-port';
const PATH = 'path';
const [BT_PATH, BY_CABLE_OR_RADIO] = ['bluetooth', 'serial-port'];

/** As Windows words them, in the languages that clubs write in. */
const INCOMING =
  '(?:incoming|entrante|entrant|eingehend\\w*|in ingresso|ingresso|inkommande|indg\u00e5ende|innkommende|inkomend\\w*|binnenkomend\\w*|przychodz\u0105\\w*|p\u0159\u00edchoz\u00ed|bej\u00f6v\u0151|\u0432\u0445\u043e\u0434\u044f\u0449\\p{L}*|de entrada|entrada)';
const OUTGOING =
  '(?:outgoing|saliente|sortant|ausgehend\\w*|in uscita|uscita|utg\u00e5ende|udg\u00e5ende|uitgaand\\w*|wychodz\u0105\\w*|odchoz\u00ed|kimen\u0151|\u0438\u0441\u0445\u043e\u0434\u044f\u0449\\p{L}*|de sa\u00edda|sa\u00edda|de salida|salida)';
const PORT = '\\bcom ?(?<number>\\d{1,3})\\b';
const BETWEEN =
  '[\\s,:;=()"\u201c\u201d-]*(?:(?:is|the|one|as|says|it says|port|com|and is|marked|est|es|ist|\u00e8|una?|der|die|das|el|la|le) ?[\\s:=(-]*){0,3}';
const DIRECTION = `(?<direction>${INCOMING}|${OUTGOING})`;

const PORT_FIRST = new RegExp(`${PORT}${BETWEEN}${DIRECTION}`, 'giu');
const DIRECTION_FIRST = new RegExp(`${DIRECTION}${BETWEEN}${PORT}`, 'giu');
const IS_INCOMING = new RegExp(`^${INCOMING}$`, 'iu');
const ANY_PORT = new RegExp(PORT, 'giu');

/** What the program is set to, or the member took. */
const CHOSEN =
  /\b(?:i (?:use|used|took|take|chose|pick|picked|selected|put|set|have|opened)|using|picked|chose|chosen|took|selected|program\w*|software|app|driver|set to|is on|im programm|programm|habe|genommen|gew\u00e4hlt|eingestellt|us[\u00e9eo]|usando|eleg\u00ed|puse|pris|choisi|mis|messo|scelto|preso|valde|valgte|koos|gekozen|wybra\u0142\p{L}*|zvolil|\u0432\u044b\u0431\u0440\u0430\u043b\p{L}*)(?!\p{L})/iu;
const CHOSEN_REACH = 60;
const SURENESS = 0.85;

type Direction = 'incoming' | 'outgoing';

/** Number of the port \u2192 its direction, as far as they are told; a direction belongs to the port nearest before or after it. */
const directionsIn = (text: string): ReadonlyMap<string, Direction> => {
  const pairs = (form: RegExp): readonly RegExpMatchArray[] => [...text.matchAll(form)];
  const [first, second] = [pairs(PORT_FIRST), pairs(DIRECTION_FIRST)];
  // "Incoming COM5, outgoing COM6" also reads as "COM5, outgoing": the order that fits them all, or the one that begins.
  const begins = (found: readonly RegExpMatchArray[]): number => found[0]?.index ?? Number.POSITIVE_INFINITY;
  const own = begins(first) <= begins(second) ? first : second;
  return new Map(
    own.map(({ groups }) => [
      groups?.['number'] ?? '',
      IS_INCOMING.test(groups?.['direction'] ?? '') ? 'incoming' : 'outgoing',
    ]),
  );
};

/** The port that is named once more as the one in use; the words behind the last such choice. */
const chosenIn = (text: string, directions: ReadonlyMap<string, Direction>): Direction | null => {
  let found: Direction | null = null;
  for (const { index, groups } of text.matchAll(ANY_PORT)) {
    const before = text.slice(Math.max(0, index - CHOSEN_REACH), index);
    const clause = before.slice(Math.max(0, ...[...before.matchAll(/[,.;!?\n]/gu)].map(({ index: at }) => at + 1)));
    const direction = directions.get(groups?.['number'] ?? '');
    if (direction !== undefined && CHOSEN.test(clause)) found = direction;
  }
  return found;
};

/** "I picked the incoming one", "j'ai pris le port entrant": in a clause that tells of a choice, and of one direction alone. */
const chosenByName = (text: string): Direction | null => {
  const any = new RegExp(DIRECTION, 'giu');
  let found: Direction | null = null;
  for (const clause of text.split(/[,.;!?\n]|\b(?:and|und|y|et|e|och|en)\b/iu)) {
    const named = [...clause.matchAll(any)].map(([word]) => word);
    if (named.length !== 1 || !CHOSEN.test(clause) || /\b(?:not|no|nicht|kein|pas|sin)\b|n['\u2019]t\b/iu.test(clause))
      continue;
    found = IS_INCOMING.test(named[0] ?? '') ? 'incoming' : 'outgoing';
  }
  return found;
};

/** Both are named, and neither as the one in use. */
const listsBoth = (text: string): boolean =>
  new RegExp(INCOMING, 'iu').test(text) && new RegExp(OUTGOING, 'iu').test(text);

const without = (read: Reading): Reading => ({
  ...read,
  facts: read.facts.filter(({ what }) => what !== BT_PORT),
  understood: read.understood.filter(({ fact }) => fact.what !== BT_PORT),
});

/** @param texts what was said so far, this text last: the ports may have been listed before */
export const withBluetoothPorts = (read: Reading, texts: readonly string[]): Reading => {
  const own = texts.at(-1) ?? '';
  if (read.facts.some(({ what, sureness }) => what === BT_PORT && sureness > SURENESS)) return read;
  const direction = chosenIn(own, directionsIn(texts.join('\n'))) ?? chosenByName(own);
  if (direction === null) return listsBoth(own) ? without(read) : read;
  const quote = quotedFrom(own);
  const fact: ReadFact = { what: BT_PORT, answer: direction, sureness: SURENESS, quote, by: 'words' };
  // A serial port "by cable or Bluetooth", or none told: two ports of two directions are Bluetooth's.
  const path = read.facts.find(({ what }) => what === PATH);
  const isOpen = path === undefined || path.answer === BY_CABLE_OR_RADIO;
  const way: ReadFact = { ...fact, what: PATH, answer: BT_PATH };
  const isKept = ({ what }: { readonly what: string }): boolean => what !== BT_PORT && !(isOpen && what === PATH);
  const label =
    direction === 'incoming' ? 'the incoming Bluetooth port is used' : 'the outgoing Bluetooth port is used';
  return {
    ...read,
    facts: [...read.facts.filter(isKept), ...(isOpen ? [way] : []), fact],
    understood: [...read.understood.filter((one) => isKept(one.fact)), { fact, label }],
  };
};
