/** Words and lines that every reply of a walk shares: choices, names, lines for a system, figures that were read filled in. */
import { cautions, cautionText } from '../../cautions/cautions.js';
import { tidy } from '../../ground/tidy.js';
import type { Choice } from '../../ground/problem.js';
import { wordsIn, type CheckEntry, type System, type WalkState } from '../../triage/index.js';
import type { Walk } from './walk-keeper.js';

/** Someone has said or pressed something in it: what stands before the member was asked of them. */
export const hasBegun = ({ state }: Walk): boolean => state.events.some(({ by }) => by !== null);

/** A question in a few words: "Lead in socket". */
export const briefOf = ({ brief, question }: CheckEntry): string => brief ?? question.replace(/\?$/u, '');

export const answerLine = (walk: Walk, step: string, answer: string): string =>
  `triage walk:${walk.id} answer:${step}.${answer}`;
export const doLine = (walk: Walk, what: string): string => `triage walk:${walk.id} do:${what}`;

export const why = (walk: Walk): Choice => ({ label: 'Why this?', run: doLine(walk, 'why') });
export const back = (walk: Walk): Choice => ({ label: 'Back a step', run: doLine(walk, 'back') });
export const doubt = (walk: Walk): Choice => ({ label: 'Something of this is wrong', run: doLine(walk, 'doubt') });

/**
 * Beside lines that speak of the right entries: what the mount should read at the member's site tonight. With a helper in the walk either
 * may press it, and it is asked for within the walk.
 */
export const entriesOffer = (walk: Walk, lines: unknown): readonly Choice[] =>
  lines !== undefined && JSON.stringify(lines).includes('right entries')
    ? [{ label: 'Show the right entries', run: walk.helperId === null ? 'entries' : doLine(walk, 'entries') }]
    : [];

export const percent = (probability: number): string =>
  probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;

/** "The adapter has no driver" within a sentence; names in capitals stay. */
export const lowered = (title: string): string =>
  /^(?:[A-Z][a-z]|A )/u.test(title) && !/^(?:Windows|Bluetooth|Linux|macOS|Tracking)/u.test(title)
    ? `${title.charAt(0).toLowerCase()}${title.slice(1)}`
    : title;

type BySystem = { readonly all?: readonly string[] | string | undefined } & {
  readonly [K in System]?: readonly string[] | string | undefined;
};

/** One text for everyone, lines for everyone, or those of each system. */
export type LinesText = string | readonly string[] | BySystem;

const SYSTEMS_NAMED: readonly (readonly [System, string])[] = [
  ['windows', 'Windows'],
  ['macos', 'macOS'],
  ['linux', 'Linux'],
];

/** One text for everyone, or the lines for one system; of every system, named, where it is not known. */
export const linesFor = (text: LinesText, system: System | null): string[] => {
  if (typeof text === 'string') return [text];
  if (Array.isArray(text)) return [...(text as readonly string[])];
  const parts = text as BySystem;
  const common = parts.all === undefined ? [] : [parts.all].flat();
  if (system !== null) return [...common, ...[parts[system] ?? []].flat()];
  return [
    ...common,
    ...SYSTEMS_NAMED.flatMap(([key, name]) => [parts[key] ?? []].flat().map((line) => `${name}: ${line}`)),
  ];
};

const PHONES = [
  { mark: 'iPhone or iPad: ', said: /\b(?:i ?phones?|i ?pads?|i ?pod|ios|ipados)\b/iu },
  { mark: 'Android: ', said: /\bandroid\b/iu },
] as const;

const EACH_PHONE = / (?=iPhone or iPad: |Android: )/u;

/** Of the lines for a kind of phone, those for the one kind that was said, without its name; all of them where none or both were. */
export const forPhone = (state: WalkState): ((line: string) => readonly string[]) => {
  const words = wordsIn(state).join('\n');
  const own = PHONES.filter(({ said }) => said.test(words));
  return (line) => {
    if (own.length !== 1) return [line];
    return line.split(EACH_PHONE).flatMap((part) => {
      const of = PHONES.find(({ mark }) => part.startsWith(mark));
      if (of === undefined) return [part];
      return own[0] === of ? [part.slice(of.mark.length)] : [];
    });
  };
};

const A_TABLET = /\b(?:i ?pads?|tablets?|galaxy tab)\b/iu;
const A_PHONE = /\b(?:(?:i ?|smart|cell|mobile )?phones?|mobile|handy)\b/iu;

/** What is written for a phone, where the member's words name a tablet alone. */
export const forTablet = (state: WalkState, system: System | null): ((line: string) => string) => {
  const words = wordsIn(state).join('\n');
  if (system !== 'phone' || !A_TABLET.test(words) || A_PHONE.test(words)) return (line) => line;
  return (line) =>
    /\btablet/iu.test(line)
      ? line
      : line
          .replace(/\b(the|this|your|same|that) phone\b/giu, '$1 tablet')
          .replace(
            /(^|[.:] )(A phone|Phones)\b/gu,
            (_, before: string, named: string) => `${before}${named === 'Phones' ? 'Tablets' : 'A tablet'}`,
          );
};

const PORT = /\/dev\/(?:ttyUSB|ttyACM|rfcomm)\d{1,3}|\/dev\/cu\.[\w.-]{2,40}|\bCOM\d{1,3}\b/giu;
const PRIVATE_ADDRESS = /\b(?:192\.168|10\.\d{1,3}|172\.(?:1[6-9]|2\d|3[01]))\.\d{1,3}(?:\.\d{1,3})?\b/gu;

const lastIn = (state: WalkState, pattern: RegExp): string | null => {
  for (const event of [...state.events].reverse()) {
    if (event.kind !== 'text') continue;
    const found = event.words.match(pattern)?.at(-1);
    if (found !== undefined) return found;
  }
  return null;
};

/** Fills what the member's own words gave into a line: the port that was read in place of an example, the bridge's address. */
const filledFrom = (state: WalkState): ((line: string) => string) => {
  const port = lastIn(state, PORT);
  const address = lastIn(state, PRIVATE_ADDRESS);
  return (line) => {
    let filled = line;
    if (port?.startsWith('/dev/tty') === true || port?.startsWith('/dev/rfcomm') === true)
      filled = filled
        .replace(/\/dev\/ttyUSB0/gu, port)
        .replace(/\bttyUSB0\b/gu, port.slice('/dev/'.length))
        .replace(/,? (?:with|use) your own tty's name/gu, '')
        .replace(/ \(\)/gu, '');
    if (address !== null) filled = filled.replace(/\bADDRESS\b/gu, address);
    return filled;
  };
};

/** The lines of a look or a remedy as this member reads them: for their system and phone, filled from their words. */
export const ownLines = (text: LinesText, system: System | null, state: WalkState): readonly string[] =>
  linesFor(text, system).flatMap(forPhone(state)).map(filledFrom(state));

/** In full, or as a card has room for it. */
const onCard = (id: string): string => cautions().get(id)?.onCard ?? cautionText(id);

/** In full the first time in a walk, briefly where another stands beside it; then only named, so that the words stay read. */
export const cautionLinesAfter = (ids: readonly string[], before: ReadonlySet<string>): string[] => {
  const all = [...new Set(ids)];
  const known = all.filter((id) => before.has(id)).map((id) => cautions().get(id)?.title ?? id);
  const fresh = all.filter((id) => !before.has(id));
  const briefOf = (id: string): string | undefined => cautions().get(id)?.brief;
  const inFull = fresh.find((id) => briefOf(id) === undefined) ?? fresh[0];
  return [
    ...fresh.map((id) => (id === inFull ? onCard(id) : (briefOf(id) ?? onCard(id)))),
    ...(known.length === 0 ? [] : [`As said before: ${known.join('; ')}.`]),
  ];
};

/** Before someone has spoken only the id is known; Discord's is a number, of no use to a reader. */
const nameOf = (said: string | null, id: string, otherwise: string): string => {
  // The console's lone user is called "you", which says nothing to whom it is shown.
  const name = tidy(said ?? '', 30);
  if (name !== '' && name !== 'you') return name;
  const readable = /^(?:console:|matrix:@)([^:]+)/u.exec(id)?.[1];
  return readable === undefined ? otherwise : tidy(readable, 30);
};

export const memberName = ({ state, memberId }: Walk): string => nameOf(state.names.member, memberId, 'the member');

export const helperName = ({ state, helperId }: Walk, otherwise: string): string =>
  nameOf(state.names.helper, helperId ?? '', otherwise);

const FIRST_TITLE = 'Finding the connection fault';

/** Where the walk stands, in two words: "Step 4", one more with each turn; `said` in its place. The whole title stands on the first card alone. */
export const titleOf = (walk: Walk, said?: string): string => {
  const { events, turns } = walk.state;
  const opened = events.find(({ by }) => by !== null)?.kind === 'text' ? 1 : 0;
  const steps = turns.length - opened;
  const words = said ?? (steps <= 0 ? FIRST_TITLE : `Step ${steps + 1}`);
  const { about, names } = walk.state;
  if (about !== undefined) return said === undefined ? `${words} for ${about}` : `${words} (${about})`;
  return walk.helperId === null && names.helper === null ? words : `${words} for ${memberName(walk)}`;
};
