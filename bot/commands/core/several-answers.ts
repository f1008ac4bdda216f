/** The answers to several requests as one, each in short; all of it is a choice away. */
import { isProblem, type Choice } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { fittingChoices, reply, type Level, type Outcome, type Reply } from '../../reply/reply.js';

export interface Answered {
  readonly words: string;
  /** The line that asks for this one alone; null where it answers nothing more, or would change something again. */
  readonly line: string | null;
  readonly outcome: Outcome;
}

/** Facts without which the summary of an answer may miss what was asked. */
const KEY_FACTS = /^(?:In the sky|This night|Highest|Sunset|Sun|Next)$/u;
/** Notes that tell for what the answer holds, and of the Sun. */
const KEY_NOTES = /^(?:Site:|Took |Used |The Sun |Times )/u;
const LEVELS: readonly Level[] = ['info', 'good', 'caution', 'danger'];
const COUNT = ['No', 'One', 'Two', 'Three'];
const WORDS_SHOWN = 60;

const once = (lines: readonly string[]): string[] => [...new Set(lines)];

/** A sentence that leads to a list, which is not here. */
const LEADS_TO_LIST = /(?<=\. )[^.]*:$/u;

const inShort = ({ summary, facts }: Reply): string =>
  [
    summary.replace(LEADS_TO_LIST, '').trim(),
    ...facts.filter(({ label }) => KEY_FACTS.test(label)).map(({ label, value }) => `${label}: ${value}.`),
  ].join(' ');

const levelOf = (replies: readonly Reply[]): Level => {
  const worst = LEVELS[Math.max(0, ...replies.map(({ level }) => LEVELS.indexOf(level)))] ?? 'info';
  return worst === 'good' && replies.some(({ level }) => level !== 'good') ? 'info' : worst;
};

const choicesOf = ({ line, outcome }: Answered): readonly Choice[] =>
  line === null || isProblem(outcome) ? (outcome.choices ?? []).slice(0, 3) : [{ label: outcome.title, run: line }];

const leftWords = (left: readonly string[]): string[] =>
  left.length === 0
    ? []
    : [
        `Not answered, as three at a time are the most: ${left.map((words) => `“${tidy(words, WORDS_SHOWN)}”`).join(', ')}.`,
      ];

export const severalAnswers = (answers: readonly Answered[], left: readonly string[]): Outcome => {
  const replies = answers.flatMap(({ outcome }) => (isProblem(outcome) ? [] : [outcome]));
  const problems = answers.flatMap(({ outcome }) => (isProblem(outcome) ? [outcome] : []));
  const [problem] = problems;
  const isForAsker = answers.some(({ outcome }) => outcome.audience === 'asker');
  const audience = isForAsker ? 'asker' : 'everyone';
  if (replies.length === 0 && problem !== undefined)
    return { ...problem, message: once(problems.map(({ message }) => message)).join(' '), audience };
  const choices = fittingChoices(answers.flatMap(choicesOf));
  return reply({
    title: `${COUNT[answers.length] ?? String(answers.length)} answers`,
    level: levelOf(replies),
    summary: 'Each in short:',
    facts: answers.map(({ words, outcome }) =>
      isProblem(outcome)
        ? { label: tidy(words, WORDS_SHOWN), value: outcome.message }
        : { label: outcome.title, value: inShort(outcome) },
    ),
    notes: [...leftWords(left), ...once(replies.flatMap(({ notes }) => notes.filter((note) => KEY_NOTES.test(note))))],
    cautions: once(replies.flatMap(({ cautions }) => cautions)),
    pointsAt: replies.flatMap(({ pointsAt }) => pointsAt),
    ...(choices.length === 0 ? {} : { choices }),
    audience,
    data: { answers: replies.map(({ data }) => data) },
  });
};
