/** The member's own words on the sheet for a helper: the opening, then what was least understood, within a few lines. */
import { tidy } from '../../ground/tidy.js';
import { withoutContact } from '../../ground/without-contact.js';
import { asksOfTheStep, saysAnswer, wantsNote } from '../../reading/index.js';
import type { Fact } from '../../reply/reply.js';
import { suspicions, type CheckEntry, type TriageModel, type WalkEvent, type WalkState } from '../../triage/index.js';
import { piecesOf, setsAgainst, telling } from './telling-words.js';
import { helperName, memberName } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

type Text = Extract<WalkEvent, { kind: 'text' }>;

/** Characters shown: of the opening, of a paste's end, of a later remark, of all later remarks together. */
const OPENING_SHOWN = 150;
const PASTE_SHOWN = 100;
const REMARK_SHOWN = 80;
const REMARKS_SHOWN = 560;
const LEAST_REMARKS = 130;
/** As if so much more were told in what was said last. */
const [OF_THE_LAST, OF_A_CONTRAST] = [3, 6];
/** Rather than that one be left out, each is shown shorter, down to this. */
const SHORTEST_SHOWN = 52;
/** The one that counts most. */
const WHOLE_SHOWN = 200;
/** What is set against what. */
const CONTRAST_SHOWN = 130;

const isPaste = ({ facts, words }: Text): boolean => facts.some(({ by }) => by !== 'words') || words.includes('\n');

/** "No change", "yes": an answer to a step, kept as one already; and words about the walk itself. */
const saysNothing = ({ words }: Text): boolean =>
  /^(?:no|yes|ok(?:ay)?|same|no change|just the same|done|not sure|works|none)\W*$/iu.test(words.trim()) ||
  asksOfTheStep(words) !== null ||
  wantsNote(words);

const quotesOf = ({ facts }: Text): readonly string[] => facts.map(({ quote }) => withoutContact(quote));
const tellingOf = (event: Text): number => telling(event.words, quotesOf(event));

const shownOf = (event: Text, limit: number, keepsFirst = false): string => {
  const one = tidy(withoutContact(event.words), event.words.length);
  if (isPaste(event) && one.length > PASTE_SHOWN) return `“…${one.slice(-PASTE_SHOWN)}”`;
  return `“${one.length <= limit ? one : piecesOf(one, quotesOf(event), limit, keepsFirst)}”`;
};

interface Shown {
  readonly event: Text;
  readonly quote: string;
}

/** The later remarks that fit, least understood first in being chosen, in the order they were said in being shown. */
const remarksShown = (
  later: readonly Text[],
  most: number,
): { readonly shown: readonly Shown[]; readonly left: number } => {
  const limit = Math.min(REMARK_SHOWN, Math.max(SHORTEST_SHOWN, Math.floor(most / Math.max(1, later.length))));
  const worthOf = (event: Text): number =>
    tellingOf(event) + (event === later.at(-1) ? OF_THE_LAST : 0) + (setsAgainst(event.words) ? OF_A_CONTRAST : 0);
  const worth = [...later].sort((a, b) => worthOf(b) - worthOf(a) || later.indexOf(b) - later.indexOf(a));
  const kept = new Map<Text, string>();
  let room = most;
  const keep = (event: Text | undefined, shownOfIt: number): void => {
    if (event === undefined || kept.has(event)) return;
    const quote = shownOf(event, shownOfIt);
    if (quote.length > room) return;
    room -= quote.length;
    kept.set(event, quote);
  };
  // What was least understood stands whole, where there is room: there the word may be that a helper needs.
  keep(worth[0], Math.min(WHOLE_SHOWN, Math.max(limit, Math.floor(room / 2))));
  for (const event of worth) keep(event, setsAgainst(event.words) ? Math.max(limit, CONTRAST_SHOWN) : limit);
  const shown = later.flatMap((event) => {
    const quote = kept.get(event);
    return quote === undefined ? [] : [{ event, quote }];
  });
  return { shown, left: later.length - kept.size };
};

const bare = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[\s.,;!?]+/gu, ' ')
    .trim();

/** Whether an earlier text held all of this one. */
const wasSaid = (texts: readonly Text[], at: number): boolean =>
  texts.slice(0, at).some(({ words }) => bare(words).includes(bare(texts[at]?.words ?? '')));

/** A suspicion stands on the sheet by itself. */
const isSuspectedIn = ({ state: { events } }: Walk, { words }: Text): boolean =>
  suspicions(events).some(({ said = '' }) => words.includes(said) && words.length < 2 * said.length + SUSPICION_FRAME);
const SUSPICION_FRAME = 40;

/** With little room the opening, of which most was read, is shown so far. */
const OPENING_IN_LITTLE = 60;

/** @param room characters that the later remarks may take together, within bounds */
export const wordsForHelper = (walk: Walk, room = REMARKS_SHOWN): readonly Fact[] => {
  const texts = walk.state.events.filter((event): event is Text => event.kind === 'text' && event.words !== '');
  const [opening, ...later] = texts.filter(
    (event, i) => !saysNothing(event) && !wasSaid(texts, i) && (i === 0 || !isSuspectedIn(walk, event)),
  );
  if (opening === undefined) return [];
  const nameOf = ({ by }: Text): string => (by === 'member' ? memberName(walk) : helperName(walk, 'The helper'));
  const { shown, left } = remarksShown(later, Math.min(REMARKS_SHOWN, Math.max(LEAST_REMARKS, room)));
  const isLittle = room < LEAST_REMARKS && later.length > 0;
  // A contrast is what a helper asks first: it stands whole, whatever else is left out.
  const isContrast = setsAgainst(opening.words);
  const openingShown = isLittle && !isContrast ? OPENING_IN_LITTLE : OPENING_SHOWN;
  const speakers = [...new Set(shown.map(({ event }) => nameOf(event)))];
  return [
    {
      label: `${nameOf(opening)} ${isPaste(opening) ? 'pasted' : 'wrote'}`,
      value: shownOf(opening, openingShown, !isContrast),
    },
    ...speakers.map((name, i) => ({
      label: name === nameOf(opening) ? 'And then' : `${name} wrote`,
      value: [
        ...shown.filter(({ event }) => nameOf(event) === name).map(({ quote }) => quote),
        ...(i === speakers.length - 1 && left > 0 && !isLittle ? [`and ${left} more`] : []),
      ].join(' '),
    })),
  ];
};

/** Whether a member's words hold an answer to the check, asked or not. */
export const alreadySaid = (model: TriageModel, { events }: WalkState, { id, answers }: CheckEntry): boolean =>
  events.some(
    (event) => event.kind === 'text' && !isPaste(event) && saysAnswer(model.reading, event.words, { id, answers }),
  );
