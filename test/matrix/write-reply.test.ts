/** Answers as Matrix content: complete, escaped, mentioning nobody, within the size that a server takes. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { problem } from '../../bot/ground/problem.js';
import {
  chartImage,
  CONTENT_LIMIT_BYTES,
  contentBytes,
  plainNotice,
  reactionsFor,
  writeOutcome,
} from '../../bot/platforms/matrix/answer/write-reply.js';
import { NOWHERE, reply, type Reply } from '../../bot/reply/reply.js';
import { ODALYS } from './events.js';

const written = (outcome: Parameters<typeof writeOutcome>[0]) =>
  writeOutcome(outcome, ODALYS, {}) as { body: string; formatted_body: string; 'm.mentions': object };

const full: Reply = reply({
  pointsAt: NOWHERE,
  title: 'NGC 7331 tonight',
  level: 'caution',
  summary: 'Up, best at 19:10, 71° high.',
  facts: [{ label: 'Sets', value: 'Thu 03:12' }],
  notes: ['Site: Cold Ridge.'],
  cautions: ['The Sun rises within the hour.'],
  choices: [
    { label: 'Tomorrow', run: 'up NGC 7331 on:tomorrow', preferred: true },
    { label: 'Chart only', run: 'altitude NGC 7331' },
  ],
});

describe('an answer', () => {
  test('says everything, in both bodies, level as a word', () => {
    const { body, formatted_body: html } = written(full);
    expect(body).toBe(
      [
        'NGC 7331 tonight',
        'Caution: Up, best at 19:10, 71° high.',
        'Sets: Thu 03:12',
        'Caution: The Sun rises within the hour.',
        'Site: Cold Ridge.',
        '1. Tomorrow (usual)',
        '2. Chart only',
        'Answer with a number, or tap it below.',
      ].join('\n'),
    );
    expect(html).toBe(
      '<p><strong>NGC 7331 tonight</strong><br><strong>Caution: </strong>Up, best at 19:10, 71° high.</p><ul><li><strong>Sets:</strong> Thu 03:12</li></ul>' +
        '<p><strong>Caution:</strong> The Sun rises within the hour.</p><p>Site: Cold Ridge.</p><ol><li>Tomorrow (usual)</li><li>Chart only</li></ol><p>Answer with a number, or tap it below.</p>',
    );
  });
  test('carries what its choices run, and as many reactions as can be tapped', () => {
    expect(writeOutcome(full, ODALYS, {})['pierhand.choices']).toEqual({
      asker: ODALYS,
      run: ['up NGC 7331 on:tomorrow', 'altitude NGC 7331'],
    });
    expect(reactionsFor(full)).toBe(2);
    expect(
      reactionsFor(
        reply({
          pointsAt: NOWHERE,
          title: '',
          summary: '',
          choices: Array.from({ length: 6 }, (_, i) => ({ label: `${i}`, run: 'help' })),
        }),
      ),
    ).toBe(0);
  });
  test('is a notice with an empty list of mentions', () => {
    for (const content of [
      writeOutcome(full, ODALYS, {}),
      writeOutcome(problem('x', 'No.'), ODALYS, {}),
      plainNotice('x'),
    ]) {
      expect(content).toMatchObject({ msgtype: 'm.notice', format: 'org.matrix.custom.html' });
      expect(content['m.mentions']).toEqual({});
    }
  });
  test('does not ring the room where a client reads mentions from the text', () => {
    const { body, formatted_body: html } = written(problem('x', 'There is no command "@room" or @ROOM.'));
    expect(body + html).not.toMatch(/@room/iu);
    expect(body.replaceAll('\u2060', '')).toContain('"@room"');
  });
  test('shows a problem and its choices', () => {
    expect(written(problem('unknown-target', 'Did you mean M27?', [{ label: 'M27', run: 'up M27' }])).body).toBe(
      'Did you mean M27?\n1. M27\nAnswer with a number, or tap it below.',
    );
  });
  test("has the chart's text alternative as the image's body", () => {
    expect(
      chartImage('Altitude of NGC 7331.', { url: 'mxc://x/y' }, { width: 1000, height: 640, bytes: 5 }, {}),
    ).toEqual({
      msgtype: 'm.image',
      body: 'Altitude of NGC 7331.',
      filename: 'chart.png',
      url: 'mxc://x/y',
      info: { mimetype: 'image/png', w: 1000, h: 640, size: 5 },
      'm.mentions': {},
    });
  });
});

describe('size', () => {
  const many = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));
  test('what does not fit is left out from the end and said so; warnings and choices stay', () => {
    const long = reply({
      pointsAt: NOWHERE,
      title: 't',
      summary: 's',
      level: 'danger',
      facts: many(300, (i) => ({ label: `Fact ${i}`, value: '☾'.repeat(150) })),
      notes: many(100, (i) => `Note ${i} ${'n'.repeat(900)}`),
      cautions: ['Filter over the front aperture.'],
      choices: many(25, (i) => ({ label: `Choice ${i}`, run: `echo ${i}` })),
    });
    const content = writeOutcome(long, ODALYS, {});
    expect(contentBytes(content)).toBeLessThanOrEqual(CONTENT_LIMIT_BYTES);
    const body = content['body'] as string;
    const shown = (body.match(/^Fact \d+: /gmu) ?? []).length + (body.match(/^Note \d+ /gmu) ?? []).length;
    const said = Number(/\(Shortened: (\d+) more lines/u.exec(body)?.[1]);
    expect(shown).toBeGreaterThan(20);
    expect(shown + said).toBe(400);
    expect(body).toContain('Fact 0: ');
    expect(body).toContain('Caution: Filter over the front aperture.');
    expect(body).toContain('25. Choice 24');
  });

  // Whatever is written: members' text may be anything, and a plug-in command may say far too much.
  const wild = fc.oneof(
    fc.string({ maxLength: 3000, unit: 'binary' }),
    fc.constant('🔭'.repeat(2000)),
    fc.constant('"<&>\''.repeat(800)),
    fc.constant('\u0001\\'.repeat(1500)),
    fc.constant('\ud800'.repeat(1500)),
    fc.constant('<script>alert(1)</script>@room'),
  );
  const anyReply = fc.record({
    title: wild,
    summary: wild,
    level: fc.constantFrom('info' as const, 'good' as const, 'caution' as const, 'danger' as const),
    facts: fc.array(fc.record({ label: wild, value: wild }), { maxLength: 40 }),
    notes: fc.array(wild, { maxLength: 30 }),
    cautions: fc.array(wild, { maxLength: 20 }),
    choices: fc.array(fc.record({ label: wild, run: fc.oneof(wild, fc.constant('\\'.repeat(200))) }), {
      maxLength: 25,
    }),
  });
  test('any answer stays under the limit, with no mark-up but ours and nobody mentioned', () => {
    let largest = 0;
    fc.assert(
      fc.property(anyReply, (parts) => {
        const content = writeOutcome(reply({ ...parts, pointsAt: NOWHERE }), ODALYS, {
          'm.relates_to': { 'm.in_reply_to': { event_id: '$x' } },
        });
        largest = Math.max(largest, contentBytes(content));
        expect(contentBytes(content)).toBeLessThanOrEqual(CONTENT_LIMIT_BYTES);
        const html = content['formatted_body'] as string;
        expect(html.replace(/<\/?(?:p|strong|ul|ol|li|br)>/gu, '')).not.toMatch(/[<>]/u);
        expect(`${html}${content['body'] as string}`).not.toMatch(/@room\b/iu);
        expect(content['m.mentions']).toEqual({});
      }),
      { numRuns: 150 },
    );
    console.log(`largest content ${largest} bytes of ${CONTENT_LIMIT_BYTES}`);
  });
});
