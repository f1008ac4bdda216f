/** The way to the mount or the system told anew, against what stood: "i was wrong, its the bluetooth one", "on usb, not wifi". */
import { takesBack, yesOrNo, type Reading } from '../../reading/index.js';
import { VOLTS_NAMED, type WalkState } from '../../triage/index.js';
import { answersOf } from './step-data.js';
import type { Began } from './turn.js';
import { hasBegun } from './walk-words.js';

/** Said against something, in whatever words; of a system only where it is named, since other machines are spoken of in any walk. */
const OPENS_ANEW = '^(?:no|nope|oh|wait|sorry|ah|hm+|oops|actually)\\b';
const CONTRASTS = {
  path: new RegExp(`${OPENS_ANEW}|\\bnot\\b|\\binstead\\b|\\brather\\b|\\bi said\\b`, 'iu'),
  system: new RegExp(`${OPENS_ANEW}|\\bnot (?:a |an |on |the )?(?:windows|macs?|macos|linux|pc)\\b`, 'iu'),
} as const;

const FIELDS = ['path', 'system'] as const;

/** What stood of the opening and is told otherwise now. */
export const toldAnew = (
  { context: { model }, before, walk }: Began,
  text: string,
  read: Reading,
): readonly string[] => {
  if (read.by !== 'words' || !hasBegun(walk)) return [];
  return FIELDS.filter((field) => {
    const told = read.facts.find(({ what }) => what === field)?.answer;
    const stood = before.context[field];
    if (told === undefined || stood === null || !(takesBack(text) || CONTRASTS[field].test(text.trim()))) return false;
    const fits = field === 'path' ? (model.reading.family(told) ?? [told]) : [told];
    return !fits.includes(stood);
  });
};

/** Without what stood of it. */
export const withoutStood = ({ context }: Began, state: WalkState, fields: readonly string[]): WalkState => ({
  ...state,
  events: [...state.events, ...fields.map((what) => ({ kind: 'not-so' as const, what, by: context.by }))],
});

/** What a way to the mount is made of. */
const NAMES_A_WAY =
  /\b(?:usb|serial|rs-?232|adapt[eo]r|dongle|hand ?set|controller|keypad|cables?|leads?|cord|sockets?|board|blue ?tooth|wi-?fi|wireless|network|lan|router|bridge|hotspot)\b/iu;
/** … and said of one by whoever was asked for it. */
const TELLS_A_WAY =
  /\b(?:direct(?:ly)?|straight|built|own|ports?|plug\w*|air|radio|house|home|ether\w*|box|module|hub|rj\w*|com\d*|wired?|wires?|app|phone|tablet|hc|ttl|motors?|paired|pairing|through|via)\b/iu;

/** Words for the way that name nothing of any: "the mount connects, but …", "it goes and then not". */
const namesNoWay = ({ isOpening, before: { step } }: Began, text: string): boolean =>
  (isOpening === true || step.id === 'path') &&
  !NAMES_A_WAY.test(text) &&
  (isOpening === true || !TELLS_A_WAY.test(text));

/** A bare yes to a question that has none among its answers. */
const isIdleYes = ({ before }: Began, text: string): boolean => {
  const reply = yesOrNo(text);
  return reply?.says === 'yes' && reply.rest === '' && !answersOf(before).some(({ label }) => /^yes\b/iu.test(label));
};

/** "When it slews" says when a meter was read, or nothing but "as I said" was said. */
export const tellsNoAnswer = (began: Began, text: string, { met }: Reading): boolean =>
  met.includes(VOLTS_NAMED) || text === '' || namesNoWay(began, text) || isIdleYes(began, text);
