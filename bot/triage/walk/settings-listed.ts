/**
 * The port's settings read out in a row ("COM5, 115200, 8N1, no flow control"): each line judged by what is usual, so that a list read
 * out is taken for no complaint about one of its lines.
 */
import type { ReadFact, Reading, Suggestion } from '../../reading/index.js';

const SPEED = /(?<![\d.:])(?:4,?800|9,?600|19,?200|38,?400|57,?600|115,?200)(?![\d.])/u;
const USUAL_SPEED = /(?<![\d.:])9,?600(?![\d.])/u;
/** Data bits, parity, stop bits, as "8N1" or in words. */
const FRAME = /\b[5-8] ?[-,/]? ?[noe](?:one|dd|ven)? ?[-,/]? ?[12]\b/iu;
const USUAL_FRAME = /\b8 ?[-,/]? ?n(?:one)? ?[-,/]? ?1\b/iu;
const FLOW = '(?:flow(?: ?control)?|hand ?shak(?:e|ing))';
const NO_FLOW = new RegExp(
  String.raw`\b(?:no|without|zero) (?:\w+ )?${FLOW}|\b${FLOW}\W{0,3}(?:is |set to |says |at )?(?:none|off|no|disabled|nothing)\b`,
  'iu',
);
const ON_FLOW = new RegExp(
  String.raw`\b${FLOW}\W{0,3}(?:is |set to |says |at )?(?:on|hardware|hard|software|rts|xon|enabled|ticked)\b|\b(?:hardware|software|rts(?:\/?cts)?|xon(?:\/?xoff)?) ${FLOW}`,
  'iu',
);

const CHECK = 'port-settings';
/** Usual is not always right. */
const AS_USUAL = 0.75;
const PLAIN = 0.85;
/** What an unusual line makes of its cause, and a usual one. */
const UNUSUAL_WEIGHT = 4;
const USUAL_WEIGHT = 0.3;

const answerOf = (text: string): { readonly answer: string; readonly sureness: number } | null => {
  if (ON_FLOW.test(text)) return { answer: 'flow-control', sureness: PLAIN };
  if (FRAME.test(text) && !USUAL_FRAME.test(text)) return { answer: 'other-frame', sureness: PLAIN };
  const isUsual = USUAL_SPEED.test(text) && (USUAL_FRAME.test(text) || NO_FLOW.test(text));
  return isUsual ? { answer: 'match', sureness: AS_USUAL } : null;
};

const suggestedBy = (text: string): readonly Suggestion[] => [
  ...(SPEED.test(text)
    ? [{ faultId: 'wrong-speed', weight: USUAL_SPEED.test(text) ? USUAL_WEIGHT : UNUSUAL_WEIGHT }]
    : []),
  ...(USUAL_FRAME.test(text) ? [{ faultId: 'wrong-frame', weight: USUAL_WEIGHT }] : []),
  ...(NO_FLOW.test(text) ? [{ faultId: 'flow-control-on', weight: USUAL_WEIGHT }] : []),
];

/** Lines of which two make a list. */
const LINES = [SPEED, FRAME, new RegExp(`${NO_FLOW.source}|${ON_FLOW.source}`, 'iu'), /\b(?:COM\d|tty(?:USB|ACM))/iu];

export const listsSettings = (text: string): boolean => LINES.filter((line) => line.test(text)).length >= 2;

/** Adds what a list of settings says, where nothing surer was read of them. */
export const withSettingsListed = (read: Reading, text: string): Reading => {
  if (!listsSettings(text)) return read;
  const found = read.facts.some(({ what }) => what === CHECK) ? null : answerOf(text);
  const fact: ReadFact | null =
    found === null ? null : { what: CHECK, ...found, quote: text.slice(0, 120), by: 'words' };
  const own = new Map(suggestedBy(text).map((one) => [one.faultId, one]));
  for (const { faultId, weight } of read.suggested)
    own.set(faultId, { faultId, weight: weight * (own.get(faultId)?.weight ?? 1) });
  return {
    ...read,
    facts: fact === null ? read.facts : [...read.facts, fact],
    suggested: [...own.values()],
    understood:
      fact === null
        ? read.understood
        : [...read.understood, { fact, label: fact.answer === 'match' ? 'the settings as usual' : '' }],
  };
};
