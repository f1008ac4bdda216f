/**
 * What strangers type at a remedy once it is done: that the very thing which failed is done now, that some sign is there and no more, that
 * nothing has changed. `does-now.txt` holds what came of it, what had failed, and the line. Ours, in members' voices; no source.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { doingsNow, outcomeSaid, statesFailure, type Doing } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const lines = readFileSync(path.join(projectRoot(), 'test/reading/corpus/does-now.txt'), 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => {
    const [kind = '', failed = '', text = ''] = line.split('\t');
    return { kind, failed: failed.split(' ') as Doing[], text };
  });
const of = (kind: string) => lines.filter((line) => line.kind === kind);
const isDone = ({ failed, text }: (typeof lines)[number]): boolean =>
  failed.some((doing) => doingsNow(text).has(doing));

describe('what the mount does now', () => {
  it('is heard where it is what failed before', () => {
    const missed = of('cured').filter((line) => !isDone(line));
    expect(missed.length / of('cured').length, missed.map(({ text }) => text).join('\n')).toBeLessThan(0.06);
  });

  it.each([...of('none'), ...of('unchanged')])('$text: none of what failed', (line) => {
    expect(isDone(line)).toBe(false);
  });
});

describe('a sign on the way, another way, what was so all along', () => {
  it('is no cure outright', () => {
    const taken = of('none').filter(({ text }) => {
      const { what, how, isCureAtRemedy } = outcomeSaid(reading, text);
      return what === 'cured' && (how === 'outright' || isCureAtRemedy === true);
    });
    expect(taken).toEqual([]);
  });
});

describe('nothing changed', () => {
  it('is heard, and no good word stands beside it', () => {
    const heard = of('unchanged').filter(
      ({ text }) => statesFailure(text) || outcomeSaid(reading, text).what === 'unchanged',
    );
    expect(heard.length / of('unchanged').length).toBeGreaterThan(0.93);
  });

  it.each([
    ['same, no response'],
    ['same as before, still COM error'],
    ['same, it connects but no answer'],
    ['as before, it goes when cooling starts'],
    ['star leaves just as fast'],
  ])('“%s” states it', (text) => {
    expect(statesFailure(text)).toBe(true);
  });

  it.each([
    ['same at first but now it connects'],
    ['no change. then i put a new cable in and off she goes'],
    ['box shows the right time now, still misses a little'],
    ['message is different now but still no connection'],
  ])('“%s” does not', (text) => {
    expect(statesFailure(text)).toBe(false);
  });
});
