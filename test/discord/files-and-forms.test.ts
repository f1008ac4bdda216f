import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { defineCommand, file, optional, text } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { readMemberFile } from '../../bot/pictures/read-member-file.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import type { SentFile } from '../doubles/discord/people-and-files.js';
import { start, type BotOptions, type Started } from './start-bot.js';

/** Named as the walk is, so that the menu on a message serves it. */
const notes = defineCommand({
  name: 'triage',
  summary: 'Takes notes',
  options: { text: optional(text('What', { maxLength: 3900 })), file: optional(file('A log or a screenshot')) },
  bare: 'text',
  freeText: true,
  forms: {
    paste: {
      title: 'Paste what you see',
      fields: [
        { id: 'text', option: 'text', label: 'Text', kind: 'paragraph', hint: 'An error, or the end of a log' },
        { id: 'file', option: 'file', label: 'Or a file', kind: 'file', hint: 'A log, or a screenshot' },
      ],
    },
    numbers: {
      title: 'What the display shows',
      into: 'text',
      fields: [
        { id: 'lst', label: 'Sidereal time', kind: 'line', required: true },
        { id: 'alt', label: 'Altitude', kind: 'line' },
      ],
    },
  },
  examples: ['triage'],
  run: async (deps, { options }) => {
    const read = options.file === undefined ? undefined : await readMemberFile(deps.pictures, options.file);
    if (read !== undefined && isProblem(read)) return read;
    return reply({
      pointsAt: NOWHERE,
      title: 'Noted',
      summary: `text: ${options.text ?? 'none'}; file: ${read?.text.slice(0, 200) ?? 'none'}; by: ${read?.by ?? 'none'}`,
      choices: [
        { label: 'Paste', run: 'triage', form: 'paste' },
        { label: 'Numbers', run: 'triage', form: 'numbers' },
        { label: 'Lost', run: 'triage', form: 'gone' },
      ],
    });
  },
});

let at: Started | undefined;
const begin = async (options: BotOptions = {}): Promise<Started> =>
  (at = await start({ commands: [notes], ...options }));
afterEach(async () => {
  const violations = at?.double.rest.violations ?? ['nothing was started'];
  await at?.stop();
  at = undefined;
  expect(violations).toEqual([]);
});

const log = (content: string): SentFile => ({
  filename: 'message.txt',
  contentType: 'text/plain; charset=utf-8',
  bytes: Buffer.from(content),
});
const said = (message: {
  readonly embeds: readonly { readonly description?: string }[];
  readonly content: string;
}): string => `${message.content}${message.embeds[0]?.description ?? ''}`;

describe('what a member sends besides words', () => {
  it('is read from an attachment of the command, and from a file on a message picked in its menu', async () => {
    const { double } = await begin();
    const [odalys, ravi] = [double.member('Odalys'), double.member('Ravi')];
    const { message } = await odalys.slash('triage', { file: log('usb 1-1: device descriptor read/64, error -71') });
    expect(said(message)).toContain('error -71; by: log');
    const written = ravi.write('see the file', double.channel, [log('Permission denied')]);
    const helped = await odalys.menu('Help with connection', written);
    expect(said(helped.message)).toContain('text: see the file; file: Permission denied');
  });

  it('may be a screenshot', { timeout: 60_000 }, async () => {
    const { double } = await begin();
    const bytes = readFileSync(path.join(import.meta.dirname, '../pictures/screens/code-10-2.png'));
    const { message } = await double
      .member('Odalys')
      .slash('triage', { file: { filename: 'screen.png', contentType: 'image/png', bytes } });
    expect(said(message)).toMatch(/\(Code 10\).*by: picture/su);
  });

  it('is pasted into a form that a button opens: a paragraph, a file, numbers', async () => {
    const { double } = await begin();
    const odalys = double.member('Odalys');
    const first = await odalys.slash('triage');
    const paste = `line one\nname:value "quotes" ${'x'.repeat(3000)}`;
    const pasted = await odalys.fillIn(first.message, 'Paste', { text: paste });
    expect(said(pasted.message)).toContain('line one');
    // The question that was answered stands without its buttons.
    expect(double.world.messages.get(first.message.id)).toMatchObject({ components: [] });
    const both = await odalys.fillIn(pasted.message, 'Paste', { text: 'it drops', file: log('usb disconnect') });
    expect(said(both.message)).toContain('text: it drops; file: usb disconnect');
    const numbers = await odalys.fillIn(both.message, 'Numbers', { lst: '5:12', alt: '40' });
    expect(said(numbers.message)).toContain('text: lst 5:12; alt 40');
  });

  it('is answered plainly when the button is older than the form, or the file is gone', async () => {
    const { double } = await begin();
    const odalys = double.member('Odalys');
    const { message } = await odalys.slash('triage');
    expect(said((await odalys.press(message, 'Lost')).message)).toContain('older version of me');
    double.world.files.set = () => double.world.files;
    const lost = await odalys.slash('triage', { file: log('never kept') });
    expect(said(lost.message)).toContain('could not fetch that file');
  });
});
