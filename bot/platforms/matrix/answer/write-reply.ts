/** A Reply as the content of one Matrix notice, plain and HTML, never too large, never a mention. Pure. */
import { isProblem, type Choice } from '../../../ground/problem.js';
import { LEVEL_WORD } from '../../../reply/palette.js';
import type { Outcome, Reply } from '../../../reply/reply.js';
import { numberedLines, numberedText, type NumberedLine } from '../../shared/choice-lines.js';
import { splitForms } from '../../shared/form-lines.js';
import { choicesContent, MOST_REACTIONS } from './choices.js';
import type { Content } from './matrix-event.js';

/**
 * An event may have 65,536 bytes with all that the server adds (Matrix specification, client-server API, "Size limits"); encryption makes
 * content a third longer, so the content itself stays under this.
 */
export const CONTENT_LIMIT_BYTES = 40_000;

/** Limits of the parts, in bytes as written; those never left out stay, in both bodies together, under the limit. */
const BYTES = {
  title: 300,
  summary: 1500,
  problem: 2000,
  caution: 700,
  label: 300,
  fact: 600,
  note: 1500,
  choice: 240,
  run: 400,
} as const;
const MOST_CAUTIONS = 8;

export const escapeHtml = (text: string): string =>
  text
    .replace(/&/gu, '&amp;')
    .replace(/</gu, '&lt;')
    .replace(/>/gu, '&gt;')
    .replace(/"/gu, '&quot;')
    .replace(/'/gu, '&#39;');

/** No control characters, no half characters; a word joiner keeps clients that look for it in the text from ringing the whole room. */
const quiet = (text: string): string =>
  text
    // eslint-disable-next-line no-control-regex -- these are what is taken out
    .replace(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/gu, ' ')
    .replace(/\p{Surrogate}/gu, '\uFFFD')
    .replace(/@(?=room\b)/giu, '@\u2060');

/** As text will stand in the event: JSON of HTML, which is never shorter than JSON of the text itself. */
const writtenBytes = (text: string): number => Buffer.byteLength(JSON.stringify(escapeHtml(text))) - 2;

/** Cut to a number of bytes at a whole character. */
const cut = (text: string, bytes: number): string => {
  const safe = quiet(text);
  if (writtenBytes(safe) <= bytes) return safe;
  let used = Buffer.byteLength('…');
  let kept = '';
  for (const character of safe) {
    used += writtenBytes(character);
    if (used > bytes) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
};

const lines = (text: string): string => escapeHtml(text).replace(/\n/gu, '<br>');

interface Block {
  readonly plain: string;
  readonly html: string;
}

const paragraph = (text: string): Block => ({ plain: text, html: `<p>${lines(text)}</p>` });

const factBlock = (facts: Reply['facts']): readonly Block[] => {
  if (facts.length === 0) return [];
  const cutFacts = facts.map(({ label, value }) => ({ label: cut(label, BYTES.label), value: cut(value, BYTES.fact) }));
  return [
    {
      plain: cutFacts.map(({ label, value }) => `${label}: ${value}`).join('\n'),
      html: `<ul>${cutFacts.map(({ label, value }) => `<li><strong>${escapeHtml(label)}:</strong> ${lines(value)}</li>`).join('')}</ul>`,
    },
  ];
};

/** Lists that follow one another are one: a list's own number stands where a line of ways out parts it. */
const choiceHtml = (line: NumberedLine, index: number, all: readonly NumberedLine[]): string => {
  if (line.beside !== false) return `<p>${escapeHtml(numberedText(line))}</p>`;
  const start = (all[index - 1]?.beside ?? false) !== false ? ` start="${line.number}"` : '';
  return `<ol${start}><li>${escapeHtml(line.labels.join(''))}</li></ol>`;
};

const choiceBlock = (choices: readonly Choice[] | undefined): readonly Block[] => {
  if (choices === undefined || choices.length === 0) return [];
  const numbered = numberedLines(
    choices,
    ({ label, preferred }) => `${cut(label, BYTES.choice)}${preferred === true ? ' (usual)' : ''}`,
  );
  const how =
    choices.length <= MOST_REACTIONS
      ? 'Answer with a number, or tap it below.'
      : `Answer with a number from 1 to ${choices.length}.`;
  return [
    {
      plain: [...numbered.map(numberedText), how].join('\n'),
      html: `${numbered.map(choiceHtml).join('').replaceAll('</ol><ol>', '')}<p>${how}</p>`,
    },
  ];
};

const headline = (reply: Reply): Block => {
  const title = cut(reply.title, BYTES.title);
  const word = reply.level === 'info' ? '' : `${LEVEL_WORD[reply.level]}: `;
  const summary = cut(reply.summary, BYTES.summary);
  return {
    plain: `${title}\n${word}${summary}`,
    html: `<p><strong>${escapeHtml(title)}</strong><br>${word === '' ? '' : `<strong>${escapeHtml(word)}</strong>`}${lines(summary)}</p>`,
  };
};

const notice = (blocks: readonly Block[], extra: Content): Content => ({
  msgtype: 'm.notice',
  body: blocks.map(({ plain }) => plain).join('\n'),
  format: 'org.matrix.custom.html',
  formatted_body: blocks.map(({ html }) => html).join(''),
  // Present and empty: nobody is notified, whatever the text looks like.
  'm.mentions': {},
  ...extra,
});

export const contentBytes = (content: Content): number => Buffer.byteLength(JSON.stringify(content));

/** A notice of one plain paragraph. */
export const plainNotice = (text: string, extra: Content = {}): Content => notice([paragraph(cut(text, 4000))], extra);

const replyNotice = (reply: Reply, choices: readonly Choice[], extra: Content): Content => {
  const cautions = reply.cautions.slice(0, MOST_CAUTIONS).map((caution) => cut(caution, BYTES.caution));
  const cautionBlocks = cautions.map((caution): Block => ({
    plain: `Caution: ${caution}`,
    html: `<p><strong>Caution:</strong> ${lines(caution)}</p>`,
  }));
  const leftOutCautions = reply.cautions.length - cautions.length;
  let facts = reply.facts;
  let notes = reply.notes.map((note) => cut(note, BYTES.note));
  for (;;) {
    const leftOut = reply.facts.length - facts.length + reply.notes.length - notes.length + leftOutCautions;
    const content = notice(
      [
        headline(reply),
        ...factBlock(facts),
        ...cautionBlocks,
        ...notes.map(paragraph),
        ...(leftOut === 0
          ? []
          : [
              paragraph(`(Shortened: ${leftOut} more ${leftOut === 1 ? 'line' : 'lines'} did not fit in one message.)`),
            ]),
        ...choiceBlock(choices),
        ...invited(reply),
      ],
      extra,
    );
    if (contentBytes(content) <= CONTENT_LIMIT_BYTES || (facts.length === 0 && notes.length === 0)) return content;
    // Warnings stay; the last notes go first, then the last facts, a quarter at a time.
    if (notes.length > 0) notes = notes.slice(0, Math.floor(notes.length * 0.75));
    else facts = facts.slice(0, Math.floor(facts.length * 0.75));
  }
};

/** What a written notice offers, in order: a line too long to carry could not be run when picked. */
export const carried = (outcome: Outcome): readonly Choice[] =>
  splitForms(outcome.choices)
    .picks.filter(({ run }) => writtenBytes(run) <= BYTES.run)
    .slice(0, 25);

/** What may be typed instead of picked. */
const invited = (outcome: Outcome): readonly Block[] =>
  splitForms(outcome.choices).invitations.map((text) => paragraph(cut(text, BYTES.choice)));

/**
 * The notice that says an outcome.
 * @param extra relation and marker; a few hundred bytes
 */
export const writeOutcome = (outcome: Outcome, askerId: string, extra: Content): Content => {
  const choices = carried(outcome);
  const all = { ...extra, ...choicesContent(choices, askerId) };
  return isProblem(outcome)
    ? notice([paragraph(cut(outcome.message, BYTES.problem)), ...choiceBlock(choices), ...invited(outcome)], all)
    : replyNotice(outcome, choices, all);
};

/** How many choices a written notice offers by reaction. */
export const reactionsFor = (outcome: Outcome): number => {
  const { length } = carried(outcome);
  return length <= MOST_REACTIONS ? length : 0;
};

/** The image that shows a chart; its text alternative is the body, as clients read it out. */
export const chartImage = (
  altText: string,
  url: Content,
  size: { readonly width: number; readonly height: number; readonly bytes: number },
  extra: Content,
): Content => ({
  msgtype: 'm.image',
  body: cut(altText, 4000),
  filename: 'chart.png',
  ...url,
  info: { mimetype: 'image/png', w: size.width, h: size.height, size: size.bytes },
  'm.mentions': {},
  ...extra,
});
