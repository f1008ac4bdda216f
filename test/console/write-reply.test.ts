import { describe, expect, it } from 'vitest';
import { problem } from '../../bot/ground/problem.js';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';

const plain = { colour: false, width: 60 } as const;

describe('an answer on the console', () => {
  it('puts the verdict first, then facts, cautions, notes and numbered choices', () => {
    const lines = consoleLines(
      reply({
        pointsAt: NOWHERE,
        title: 'M 46',
        level: 'caution',
        summary: 'Up, best at 02:10 GMT.',
        facts: [
          { label: 'Dark', value: '18:00 to 06:00' },
          { label: 'In the sky', value: 'all night' },
        ],
        cautions: ['The Sun is up.'],
        notes: ['Site: Cork.'],
        choices: [
          { label: 'More', run: 'up M 46' },
          { label: 'Other', run: 'up M 47', preferred: true },
        ],
      }),
      'charts/m-46.png',
      plain,
    );
    expect(lines).toEqual([
      'M 46',
      'Caution: Up, best at 02:10 GMT.',
      '  Dark        18:00 to 06:00',
      '  In the sky  all night',
      '  ! The Sun is up.',
      '  Site: Cork.',
      '  Picture: charts/m-46.png',
      '  1. More',
      '  2. Other (usual)',
      '  Type a number from 1 to 2, or another question.',
    ]);
  });

  it('says the level in words, with colour only where it is wanted', () => {
    const danger = reply({ pointsAt: NOWHERE, title: 'Venus', level: 'danger', summary: 'Four degrees from the Sun.' });
    expect(consoleLines(danger, null, plain)[1]).toBe('Danger: Four degrees from the Sun.');
    // eslint-disable-next-line no-control-regex
    expect(consoleLines(danger, null, plain).join('')).not.toMatch(/\u001b/u);
    expect(consoleLines(danger, null, { colour: true, width: 60 })[1]).toBe(
      '\u001b[1;31mDanger: Four degrees from the Sun.\u001b[0m',
    );
  });

  it('wraps to the width of a narrow terminal without losing a word', () => {
    const words = Array.from({ length: 60 }, (_, i) => `word${i}`);
    const lines = consoleLines(
      reply({
        pointsAt: NOWHERE,
        title: 't',
        summary: words.join(' '),
        facts: [{ label: 'Why', value: words.join(' ') }],
      }),
      null,
      { colour: false, width: 40 },
    );
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(40);
    expect(
      lines
        .join(' ')
        .split(/\s+/u)
        .filter((word) => word === 'word59'),
    ).toHaveLength(2);
  });

  it('shows a problem as its one sentence with what may be chosen', () => {
    expect(
      consoleLines(problem('ambiguous-target', 'Which one?', [{ label: 'M 1', run: 'up M 1' }]), null, plain),
    ).toEqual(['Which one?', '  1. M 1', '  Type 1, or another question.']);
  });

  it('gives the lines to ask next where nobody can pick by number', () => {
    expect(
      consoleLines(problem('ambiguous-target', 'Which one?', [{ label: 'M 1', run: 'up M 1' }]), null, {
        ...plain,
        oneShot: true,
      }),
    ).toEqual(['Which one?', '  Ask next:', '    up M 1']);
  });
});
