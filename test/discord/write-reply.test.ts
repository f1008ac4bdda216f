import { ComponentType } from 'discord-api-types/v10';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problem, type Choice } from '../../bot/ground/problem.js';
import { LIMITS } from '../../bot/platforms/discord/write/limits.js';
import { runOf } from '../../bot/platforms/discord/write/write-choices.js';
import { writeOutcome, type DiscordMessage } from '../../bot/platforms/discord/write/write-reply.js';
import { LEVEL_WORD } from '../../bot/reply/palette.js';
import { NOWHERE, reply, type Level, type Reply } from '../../bot/reply/reply.js';
import { requestFaults } from '../doubles/discord/request-rules.js';

// The judge is Discord's own published document (package discord-api-spec, generated from github.com/discord/discord-api-spec),
// and for what it does not state, "Embed Limits" of Discord's developer documentation; see request-rules.ts.
const faultsOf = ({ body, files }: DiscordMessage): readonly string[] | undefined =>
  requestFaults(
    'POST',
    '/interactions/1/token/callback',
    { type: 4, data: JSON.parse(JSON.stringify(body)) as unknown },
    files.length,
  );

const embedOf = (message: DiscordMessage) => {
  const embed = message.body.embeds?.[0];
  if (embed === undefined) throw new Error('no embed');
  return embed;
};
const facts = (count: number, valueLength = 10) =>
  Array.from({ length: count }, (_, i) => ({ label: `Fact ${i}`, value: 'v'.repeat(valueLength) }));
const choices = (count: number): Choice[] =>
  Array.from({ length: count }, (_, i) => ({ label: `Choice ${i}`, run: `up M${i + 1}` }));
const written = (parts: Partial<Reply>) =>
  writeOutcome(reply({ pointsAt: NOWHERE, title: 'NGC 7331', summary: 'Up.', ...parts }), null);

describe('an answer on Discord stays within every limit, and says what it leaves', () => {
  it('gives each of 25 facts its own field, and holds more as lines', () => {
    const full = embedOf(written({ facts: facts(25) }));
    expect(full.fields).toHaveLength(25);
    for (const count of [26, 39, 100]) {
      const over = embedOf(written({ facts: facts(count) }));
      const lines = (over.fields ?? []).flatMap(({ value }) => value.split('\n'));
      expect(lines).toEqual(facts(count).map(({ label, value }) => `**${label}** ${value}`));
      expect(over.footer).toBeUndefined();
    }
  });

  it('says how many of too many facts are left', () => {
    const { fields = [], footer } = embedOf(written({ facts: facts(39, 300) }));
    const shown = fields.flatMap(({ value }) => value.split('\n')).length;
    expect(shown).toBeGreaterThan(15);
    expect(footer?.text).toBe(`… and ${39 - shown} more facts.`);
  });

  it.each([
    ['title', LIMITS.embedTitle, (n: number) => embedOf(written({ title: 't'.repeat(n) })).title],
    ['summary', LIMITS.embedDescription, (n: number) => embedOf(written({ summary: 's'.repeat(n) })).description],
    [
      'fact value',
      LIMITS.fieldValue,
      (n: number) => embedOf(written({ facts: [{ label: 'a', value: 'v'.repeat(n) }] })).fields?.[0]?.value,
    ],
    [
      'fact label',
      LIMITS.fieldName,
      (n: number) => embedOf(written({ facts: [{ label: 'l'.repeat(n), value: 'v' }] })).fields?.[0]?.name,
    ],
    [
      'problem',
      LIMITS.content,
      (n: number) => writeOutcome({ problem: 'p', message: 'm'.repeat(n) }, null).body.content,
    ],
  ])('%s: whole at the limit, cut with a sign one beyond', (_what, limit, make) => {
    expect(make(limit)).toHaveLength(limit);
    expect(make(limit)).not.toContain('…');
    expect(make(limit + 1)).toHaveLength(limit);
    expect(make(limit + 1)?.endsWith('…')).toBe(true);
  });

  it('keeps the whole embed within 6,000 characters and still fits at exactly that', () => {
    // author "For information" 15 + title 8 + description 3 leave 5974 less the footer's room.
    const many = embedOf(written({ facts: facts(7, 1024) }));
    const length = (embed: typeof many) =>
      (embed.author?.name.length ?? 0) +
      (embed.title?.length ?? 0) +
      (embed.description?.length ?? 0) +
      (embed.footer?.text.length ?? 0) +
      (embed.fields ?? []).reduce((sum, { name, value }) => sum + name.length + value.length, 0);
    expect(many.fields).toHaveLength(5);
    expect(many.footer?.text).toBe('… and 2 more facts.');
    expect(length(many)).toBeLessThanOrEqual(LIMITS.embedTotal);
    expect(LIMITS.embedTotal - length(many)).toBeLessThan(1030);
  });

  it('gives up notes before cautions, and says how many', () => {
    const { description = '' } = embedOf(
      written({
        summary: 'Near the Sun.',
        cautions: ['Cap the finder.'],
        notes: Array.from({ length: 60 }, (_, i) => `${i} ${'n'.repeat(98)}`),
      }),
    );
    expect(description).toContain('Cap the finder.');
    expect(description.length).toBeLessThanOrEqual(LIMITS.embedDescription);
    const shown = description.match(/^\d+ n+$/gmu)?.length ?? 0;
    expect(shown).toBeGreaterThan(30);
    expect(description).toContain(`… and ${60 - shown} more notes.`);
  });

  it('writes five choices as buttons, six and up to 25 as a menu, and names those beyond', () => {
    const rowOf = (message: DiscordMessage) => message.body.components?.[0]?.components ?? [];
    expect(rowOf(written({ choices: choices(5) })).map(({ type }) => type)).toEqual([2, 2, 2, 2, 2]);
    const menu = rowOf(written({ choices: choices(25) }))[0];
    expect(menu?.type === ComponentType.StringSelect ? menu.options : []).toHaveLength(25);
    const over = written({ choices: choices(27) });
    expect(faultsOf(over)).toEqual([]);
    expect(embedOf(over).description).toContain('Also possible: Choice 25; Choice 26.');
  });

  it('carries the longest line a choice may have, and leaves a longer one in words', () => {
    const line = (length: number) => `up ${'x'.repeat(length - 3)}`;
    const fits = written({ choices: [{ label: 'Fits', run: line(90) }] });
    const [button] = fits.body.components?.[0]?.components ?? [];
    expect(button?.type === ComponentType.Button && 'custom_id' in button ? runOf(button.custom_id) : undefined).toBe(
      line(90),
    );
    const tooLong = written({ choices: [{ label: 'Too long', run: line(99) }] });
    expect(tooLong.body.components).toBeUndefined();
    expect(embedOf(tooLong).description).toContain('Also possible: Too long.');
  });

  it('gives the chart its words: 1,024 characters of alternative text, cut beyond', () => {
    const chart = (altText: string) =>
      reply({
        pointsAt: NOWHERE,
        title: 'a',
        summary: 'b',
        chart: { kind: 'horizon', title: 'c', points: [], altText },
      });
    expect(writeOutcome(chart('w'.repeat(1024)), Buffer.from('png')).body.attachments?.[0]?.description).toHaveLength(
      1024,
    );
    expect(
      writeOutcome(chart('w'.repeat(1025)), Buffer.from('png')).body.attachments?.[0]?.description.endsWith('…'),
    ).toBe(true);
    expect(embedOf(writeOutcome(chart('it rises in the east'), null)).description).toContain('it rises in the east');
  });

  it.each(Object.keys(LEVEL_WORD) as Level[])('says %s in words, not by colour alone', (level) => {
    expect(embedOf(written({ level })).author?.name).toBe(LEVEL_WORD[level]);
  });

  it('shows a private answer and a problem to the asker alone', () => {
    expect(written({ audience: 'asker' }).body.flags).toBe(64);
    expect(writeOutcome(problem('unknown-target', 'No.'), null).body.flags).toBe(64);
    expect(written({}).body.flags).toBeUndefined();
  });

  it('whatever a reply holds, Discord takes it', () => {
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 300 }),
      fc.string({ maxLength: 5000 }),
      fc.integer({ min: 0, max: 9000 }).map((n) => '*_@<#'.repeat(n / 5)),
      fc.constantFrom('@everyone', '<@123>', '[a](http://b)', '\u{1F319}'.repeat(700)),
    );
    const options = { maxLength: 40 };
    const replies = fc.record({
      title: texts,
      summary: texts,
      level: fc.constantFrom<Level>('info', 'good', 'caution', 'danger'),
      facts: fc.array(fc.record({ label: texts, value: texts }), options),
      notes: fc.array(texts, options),
      cautions: fc.array(texts, { maxLength: 6 }),
      choices: fc.array(
        fc.record({
          label: fc.oneof(
            fc.constant('x'),
            texts.filter((text) => text.trim() !== ''),
          ),
          run: fc.string({ minLength: 1, maxLength: 120 }),
        }),
        options,
      ),
      audience: fc.constantFrom<'everyone' | 'asker'>('everyone', 'asker'),
    });
    fc.assert(
      fc.property(replies, fc.boolean(), (parts, withChart) => {
        const message = writeOutcome(
          reply({
            pointsAt: NOWHERE,
            ...parts,
            ...(withChart
              ? { chart: { kind: 'horizon', title: '', points: [], altText: parts.summary } as const }
              : {}),
          }),
          withChart ? Buffer.from('png') : null,
        );
        expect(faultsOf(message)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
