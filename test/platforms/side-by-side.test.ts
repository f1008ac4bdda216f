/** The same Outcome through every writer: what one platform says, the others say too, each within its own limits. */
import { beforeAll, describe, expect, it } from 'vitest';
import { isProblem, problem } from '../../bot/ground/problem.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { defineCommand, type Deps } from '../../bot/commands/core/command.js';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import { writeOutcome as writeDiscord } from '../../bot/platforms/discord/write/write-reply.js';
import { writeOutcome as writeMatrix } from '../../bot/platforms/matrix/answer/write-reply.js';
import { LEVEL_WORD } from '../../bot/reply/palette.js';
import { NOWHERE, reply, type Outcome, type Reply } from '../../bot/reply/reply.js';
import { ask, realDeps } from '../commands/real-deps.js';

const NOW = Date.UTC(2026, 10, 25, 12);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

interface Written {
  readonly console: string;
  readonly discord: string;
  readonly matrix: string;
}

const written = (outcome: Outcome): Written => ({
  console: consoleLines(outcome, null, { colour: false, width: 100_000 }).join('\n'),
  discord: JSON.stringify(writeDiscord(outcome, null)),
  matrix: JSON.stringify(writeMatrix(outcome, '@ravi:fenwold.example', {})),
});

/** Letters and digits alone, so that escaping and mark-up do not matter. */
const bones = (text: string): string =>
  text
    .replace(/\\[nu](?:[0-9a-f]{4})?|&(?:amp|lt|gt|quot|#39|#x27);|<[^>]*>/gu, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .toLowerCase();

const sayAlike = (outcome: Outcome, said: readonly string[]): void => {
  for (const [platform, text] of Object.entries(written(outcome))) {
    for (const part of said) expect(bones(text as string), `${platform} should say: ${part}`).toContain(bones(part));
  }
};

describe('one answer on three platforms', () => {
  it.each([
    'up NGC 7331 site:51.05,-114.07',
    'altitude Mercury site:52.71,0.12',
    'tonight site:52.71,0.12',
    'dark site:52.71,0.12',
    'sun Venus site:52.71,0.12',
    'entries site:52.71,0.12',
    'pole site:52.71,0.12',
    'alignment site:52.71,0.12 at:2026-11-25T20:00Z',
    'sidereal site:52.71,0.12',
    'epoch Mizar',
    'triage',
    'help',
  ])('%s', async (line) => {
    const outcome = await ask(deps, line, NOW);
    expect(isProblem(outcome)).toBe(false);
    const answer = outcome as Reply;
    sayAlike(outcome, [
      answer.title,
      answer.summary,
      ...answer.facts.flatMap(({ label, value }) => [label, value]),
      ...answer.notes,
      ...answer.cautions,
      ...(answer.level === 'info' ? [] : [LEVEL_WORD[answer.level]]),
      // Where no form can open, the invitation to type stands in the choice's place; its words differ from the label.
      ...(answer.choices ?? []).flatMap(({ label, form }) => (form === undefined ? [label] : [])),
    ]);
  });

  it.each([1, 30])('help, with %i commands more than there are', async (more) => {
    const extra = Array.from({ length: more }, (_, at) =>
      defineCommand({
        name: `eyepiece${at}`,
        summary: 'How much does an eyepiece magnify, how wide is its field, and is the exit pupil too large?',
        options: {},
        examples: [`eyepiece${at}`],
        run: async () => reply({ pointsAt: NOWHERE, title: '', summary: '' }),
      }),
    );
    const commands = [...allCommands, ...extra];
    const outcome = await ask({ ...deps, commands }, 'help', NOW);
    sayAlike(
      outcome,
      commands.flatMap(({ name, summary }) => [name, summary]),
    );
  });

  it('a refusal with its offers', async () => {
    const outcome = await ask(deps, 'up M 102 site:52.71,0.12', NOW);
    expect(isProblem(outcome)).toBe(true);
    sayAlike(outcome, [(outcome as { message: string }).message, 'Pinwheel Galaxy']);
  });

  it('what a member wrote is never a mention, a link or mark-up', () => {
    const nasty =
      '@everyone <@123> @room [here](https://example.org) <b>bold</b> **loud** `code` <img src=x onerror=alert(1)> https://example.org/x';
    for (const outcome of [
      problem('x', nasty),
      reply({
        pointsAt: NOWHERE,
        title: nasty,
        summary: nasty,
        facts: [{ label: nasty, value: nasty }],
        notes: [nasty],
        cautions: [nasty],
      }),
    ]) {
      const { body } = writeDiscord(outcome, null);
      expect(body.allowed_mentions).toEqual({ parse: [] });
      // Titles of embeds read no mentions, but the rest reads mark-up: every sign of it has a backslash before it.
      expect([body.content, body.embeds?.[0]?.description].join(' ')).not.toMatch(
        /(?<!\\)(?:<@|\[here|\*\*|`|https:)/u,
      );
      const matrix = writeMatrix(outcome, '@ravi:fenwold.example', {}) as {
        formatted_body: string;
        'm.mentions': object;
        msgtype: string;
      };
      expect(matrix['m.mentions']).toEqual({});
      expect(matrix.msgtype).toBe('m.notice');
      expect(matrix.formatted_body).not.toMatch(/<img|<b>bold|href=/u);
    }
  });
});
