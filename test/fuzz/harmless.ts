/** What may be said in a chat whatever was asked: no unseen characters, no mass mention, every bound kept. */
import { isProblem, MESSAGE_LIMIT, type Choice } from '../../bot/ground/problem.js';
import { type Outcome } from '../../bot/reply/reply.js';

// Control characters but the line feed, format characters (bidirectional controls, zero-width characters) and lone surrogates.
// eslint-disable-next-line no-control-regex
const UNSEEN = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\p{Cf}\p{Cs}]/u;
const MASS_MENTION = /@(?:everyone|here)\b/iu;

export const textTroubles = (text: string): string[] => [
  ...(UNSEEN.test(text) ? [`unseen characters in ${JSON.stringify(text.slice(0, 200))}`] : []),
  ...(MASS_MENTION.test(text) ? [`a mass mention in ${JSON.stringify(text.slice(0, 200))}`] : []),
];

const choiceTroubles = (choices: readonly Choice[] | undefined): string[] => [
  ...((choices?.length ?? 0) > 25 ? [`${choices?.length} choices`] : []),
  ...(choices ?? []).flatMap(({ label, run }) => [
    ...textTroubles(label),
    ...textTroubles(run),
    ...(label.length > 80 || label === '' ? [`a label of ${label.length}: ${label}`] : []),
    ...(run.length > 90 ? [`a line of ${run.length}: ${run}`] : []),
  ]),
];

/** Words that no sentence of ours holds: where one stands, and the member did not type it, a value was missing. */
const INNARDS = /\bundefined\b|\bNaN\b|\[object|\n {4}at /u;
const innardTroubles = (text: string, asked: string): string[] =>
  INNARDS.test(text) && !/undefined|NaN|object/u.test(asked) ? [`the program shows through: ${text}`] : [];

/** Empty when the outcome may be shown to who asked this. */
export const outcomeTroubles = (outcome: Outcome, asked: string): string[] => {
  if (isProblem(outcome)) {
    return [
      ...textTroubles(outcome.message),
      ...choiceTroubles(outcome.choices),
      ...(outcome.message.length > MESSAGE_LIMIT || outcome.message.trim() === ''
        ? [`a message of ${outcome.message.length} characters`]
        : []),
      ...(outcome.problem === 'internal' ? ['a fault of ours'] : []),
      ...(!/^[a-z]+(?:-[a-z]+)*$/u.test(outcome.problem) ? [`the code ${outcome.problem}`] : []),
      ...innardTroubles(outcome.message, asked),
    ];
  }
  const { title, summary, facts, notes, cautions, chart, choices } = outcome;
  return [
    ...[
      title,
      summary,
      ...facts.flatMap(({ label, value }) => [label, value]),
      ...notes,
      ...cautions,
      ...(chart === undefined ? [] : [chart.title, chart.altText]),
    ].flatMap((text) => [
      ...textTroubles(text),
      ...(text === '' ? ['an empty line'] : []),
      ...(text.length > 4000 ? [`a text of ${text.length} characters`] : []),
      ...innardTroubles(text, asked),
    ]),
    ...choiceTroubles(choices),
  ];
};
