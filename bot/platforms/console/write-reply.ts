/** A Reply as lines for a terminal: verdict first, wrapped, numbered choices; colour only where it is wanted. */
import { isProblem, type Choice, type Problem } from '../../ground/problem.js';
import { LEVEL_WORD } from '../../reply/palette.js';
import type { Level, Outcome, Reply } from '../../reply/reply.js';
import { numberedLines, numberedText } from '../shared/choice-lines.js';
import { splitForms } from '../shared/form-lines.js';
import { textCurve } from '../../reply/text-curve.js';

export interface ConsoleStyle {
  readonly colour: boolean;
  readonly width: number;
  /** Where nobody can pick by number afterwards (one-shot use), choices are given as the lines to ask next. */
  readonly oneShot?: boolean;
}

const ANSI: Readonly<Record<Level, string>> = { info: '36', good: '32', caution: '33', danger: '1;31' };
const painted = (text: string, code: string, { colour }: ConsoleStyle): string =>
  colour ? `\u001b[${code}m${text}\u001b[0m` : text;

const wrapped = (text: string, width: number, indent: string): string[] => {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(' ')) {
      if (line !== '' && line.length + 1 + word.length > width - indent.length) {
        lines.push(indent + line);
        line = word;
      } else {
        line = line === '' ? word : `${line} ${word}`;
      }
    }
    lines.push(indent + line);
  }
  return lines;
};

const choiceLines = (offered: readonly Choice[] | undefined, { width, oneShot }: ConsoleStyle): string[] => {
  const { picks: choices, invitations } = splitForms(offered);
  const invited = oneShot === true ? [] : invitations.flatMap((line) => wrapped(line, width, '  '));
  if (choices.length === 0) return invited;
  if (oneShot === true) return ['  Ask next:', ...choices.flatMap(({ run }) => wrapped(run, width, '    '))];
  return [
    ...numberedLines(choices, ({ label, preferred }) => `${label}${preferred === true ? ' (usual)' : ''}`).flatMap(
      (line) => wrapped(numberedText(line), width, '  '),
    ),
    ...invited,
    `  Type ${choices.length === 1 ? '1' : `a number from 1 to ${choices.length}`}, or another question.`,
  ];
};

const problemLines = (problem: Problem, style: ConsoleStyle): string[] => [
  ...wrapped(problem.message, style.width, ''),
  ...choiceLines(problem.choices, style),
];

const LABEL_LIMIT = 14;

const factLines = (reply: Reply, { width }: ConsoleStyle): string[] => {
  const column = Math.max(0, ...reply.facts.map(({ label }) => label.length).filter((length) => length <= LABEL_LIMIT));
  return reply.facts.flatMap(({ label, value }) => {
    if (label.length > LABEL_LIMIT) return [...wrapped(label, width, '  '), ...wrapped(value, width, '    ')];
    const [first = '', ...rest] = wrapped(value, width - column - 4, '');
    return [`  ${label.padEnd(column)}  ${first}`, ...rest.map((line) => `  ${' '.repeat(column)}  ${line}`)];
  });
};

const replyLines = (reply: Reply, chartFile: string | null, style: ConsoleStyle): string[] => [
  painted(reply.title, '1', style),
  ...wrapped(
    reply.level === 'info' ? reply.summary : `${LEVEL_WORD[reply.level]}: ${reply.summary}`,
    style.width,
    '',
  ).map((line) => painted(line, ANSI[reply.level], style)),
  ...factLines(reply, style),
  ...reply.cautions.flatMap((caution) =>
    wrapped(`! ${caution}`, style.width, '  ').map((line) =>
      painted(line, ANSI[reply.level === 'danger' ? 'danger' : 'caution'], style),
    ),
  ),
  ...reply.notes.flatMap((note) => wrapped(note, style.width, '  ')),
  ...(reply.chart?.kind === 'night' ? ['', ...textCurve(reply.chart, style.width)] : []),
  ...(reply.chart?.kind === 'horizon' ? wrapped(reply.chart.altText, style.width, '  ') : []),
  ...(chartFile === null ? [] : [`  Picture: ${chartFile}`]),
  ...choiceLines(reply.choices, style),
];

/** Lines to print, without a final newline. `chartFile` is where the picture was written, or null. */
export const consoleLines = (outcome: Outcome, chartFile: string | null, style: ConsoleStyle): readonly string[] =>
  isProblem(outcome) ? problemLines(outcome, style) : replyLines(outcome, chartFile, style);
