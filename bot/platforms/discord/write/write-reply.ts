/** The one writer from an Outcome to a Discord message; its limits hold by construction, and what does not fit is said. */
import { MessageFlags, type APIAllowedMentions, type APIEmbed, type APIEmbedField } from 'discord-api-types/v10';
import { isProblem, type Choice, type Problem } from '../../../ground/problem.js';
import { LEVEL_COLOUR, LEVEL_WORD } from '../../../reply/palette.js';
import type { Fact, Outcome, Reply } from '../../../reply/reply.js';
import { escapeWithin, plainWithin } from './escape-text.js';
import { LIMITS } from './limits.js';
import { writeChoices, type Row } from './write-choices.js';

/** Nobody is ever pinged. */
export const NO_MENTIONS: APIAllowedMentions = { parse: [] };
const CHART_FILE = 'chart.png';

/** What is sent, as Discord's own JSON, and the file that goes with it. */
export interface DiscordMessage {
  readonly body: {
    readonly content?: string;
    readonly embeds?: APIEmbed[];
    readonly components?: Row[];
    readonly attachments?: { id: string; filename: string; description: string }[];
    readonly allowed_mentions: APIAllowedMentions;
    readonly flags?: number;
  };
  readonly files: readonly { readonly name: string; readonly data: Buffer; readonly contentType: string }[];
  /** For the asker's eyes alone. */
  readonly isPrivate: boolean;
}

const colourNumber = (hex: string): number => Number.parseInt(hex.slice(1), 16);
const moreOf = (count: number, what: string): string => `… and ${count} more ${what}${count === 1 ? '' : 's'}.`;

/** As many paragraphs as fit, in order; the last line says how many did not. The first is cut rather than left. */
const paragraphsWithin = (paragraphs: readonly string[], what: string, limit: number): string => {
  let text = '';
  for (const [index, paragraph] of paragraphs.entries()) {
    const gap = text === '' ? '' : '\n';
    const left = paragraphs.length - index;
    const escaped = escapeWithin(paragraph, Number.MAX_SAFE_INTEGER);
    const mustKeep = left > 1 ? 1 + moreOf(left - 1, what).length : 0;
    if (text.length + gap.length + escaped.length + mustKeep <= limit) {
      text += gap + escaped;
    } else if (text === '') {
      text = escapeWithin(paragraph, limit - mustKeep);
    } else {
      return `${text}\n${moreOf(left, what)}`;
    }
  }
  return text;
};

const describe = (reply: Reply, notes: readonly string[], limit: number): string => {
  // Summary and cautions come first and are given the room they need; notes take what is left.
  const head = paragraphsWithin(
    [reply.summary, ...reply.cautions.map((caution) => `⚠ ${caution}`)].filter((text) => text.trim() !== ''),
    'caution',
    limit,
  );
  const room = limit - head.length - 2;
  if (notes.length === 0 || room < 40) return head;
  const tail = paragraphsWithin(notes, 'note', room);
  return head === '' ? tail : `${head}\n\n${tail}`;
};

interface Fields {
  readonly fields: APIEmbedField[];
  /** So many facts did not fit. */
  readonly left: number;
}

const NO_NAME = '\u200b';

/** A field for each fact, as many as fit the room. */
const fieldEach = (facts: readonly Fact[], room: number): Fields => {
  const fields: APIEmbedField[] = [];
  let used = 0;
  for (const { label, value } of facts) {
    const field = {
      name: escapeWithin(label, LIMITS.fieldName) || NO_NAME,
      value: escapeWithin(value, LIMITS.fieldValue) || '—',
      inline: value.length <= 40,
    };
    const length = field.name.length + field.value.length;
    if (used + length > room) break;
    fields.push(field);
    used += length;
  }
  return { fields, left: facts.length - fields.length };
};

const factLine = ({ label, value }: Fact): string => {
  const name = escapeWithin(label.trim(), LIMITS.fieldName);
  const start = name === '' ? '' : `**${name}** `;
  return `${start}${escapeWithin(value, LIMITS.fieldValue - start.length) || '—'}`;
};

/** A line for each fact, several to a field: so more facts fit than there may be fields. */
const linesInFields = (facts: readonly Fact[], room: number): Fields => {
  const values: string[] = [];
  let used = 0;
  let shown = 0;
  for (const line of facts.map(factLine)) {
    const last = values.at(-1);
    const joins = last !== undefined && last.length + 1 + line.length <= LIMITS.fieldValue;
    used += 1 + line.length;
    if (used > room || (!joins && values.length === LIMITS.embedFields)) break;
    if (joins) values[values.length - 1] = `${last}\n${line}`;
    else values.push(line);
    shown++;
  }
  return { fields: values.map((value) => ({ name: NO_NAME, value })), left: facts.length - shown };
};

const fieldsWithin = ({ facts }: Reply, room: number): Fields =>
  facts.length <= LIMITS.embedFields ? fieldEach(facts, room) : linesInFields(facts, room);

const leftChoices = (left: readonly Choice[]): string[] =>
  left.length === 0
    ? []
    : [
        `Also possible: ${left
          .slice(0, 5)
          .map(({ label }) => label)
          .join('; ')}${left.length > 5 ? ` and ${left.length - 5} more` : ''}.`,
      ];

const writeAnswer = (reply: Reply, png: Buffer | null): DiscordMessage => {
  const { rows, left } = writeChoices(reply.choices ?? []);
  const word = LEVEL_WORD[reply.level];
  const title = escapeWithin(reply.title, LIMITS.embedTitle);
  const notes = [
    ...reply.notes,
    ...(reply.chart !== undefined && png === null ? [reply.chart.altText] : []),
    ...leftChoices(left),
  ];
  const description = describe(reply, notes, LIMITS.embedDescription);
  const footerRoom = moreOf(reply.facts.length, 'fact').length;
  const { fields, left: factsLeft } = fieldsWithin(
    reply,
    LIMITS.embedTotal - word.length - title.length - description.length - footerRoom,
  );
  const embed: APIEmbed = {
    author: { name: word },
    title,
    description,
    color: colourNumber(LEVEL_COLOUR[reply.level]),
    ...(fields.length === 0 ? {} : { fields }),
    ...(factsLeft === 0 ? {} : { footer: { text: moreOf(factsLeft, 'fact') } }),
    ...(png === null ? {} : { image: { url: `attachment://${CHART_FILE}` } }),
  };
  const isPrivate = reply.audience === 'asker';
  return {
    body: {
      embeds: [embed],
      ...(rows.length === 0 ? {} : { components: rows }),
      ...(png === null
        ? {}
        : {
            attachments: [
              {
                id: '0',
                filename: CHART_FILE,
                description: plainWithin(reply.chart?.altText ?? reply.title, LIMITS.attachmentDescription),
              },
            ],
          }),
      allowed_mentions: NO_MENTIONS,
      ...(isPrivate ? { flags: MessageFlags.Ephemeral } : {}),
    },
    files: png === null ? [] : [{ name: CHART_FILE, data: png, contentType: 'image/png' }],
    isPrivate,
  };
};

const writeProblem = (problem: Problem): DiscordMessage => {
  const { rows, left } = writeChoices(problem.choices ?? []);
  const text = [problem.message, ...leftChoices(left)].join('\n');
  return writeNotice(text, true, rows);
};

/** A short plain line, for the asker alone or for all. */
export const writeNotice = (text: string, isPrivate: boolean, rows: Row[] = []): DiscordMessage => ({
  body: {
    content: escapeWithin(text, LIMITS.content),
    ...(rows.length === 0 ? {} : { components: rows }),
    allowed_mentions: NO_MENTIONS,
    ...(isPrivate ? { flags: MessageFlags.Ephemeral } : {}),
  },
  files: [],
  isPrivate,
});

/** @param png the reply's chart, or null where there is none or it could not be drawn (its words are then given instead) */
export const writeOutcome = (outcome: Outcome, png: Buffer | null): DiscordMessage =>
  isProblem(outcome) ? writeProblem(outcome) : writeAnswer(outcome, png);
