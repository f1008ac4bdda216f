/** One word by chance against what the line tells: in a walk the line goes first. The sentences are our own; common practice, no source. */
import { describe, expect, it } from 'vitest';
import { curedByDeed, readText } from '../../bot/reading/index.js';
import { startWalk, tellText } from '../../bot/triage/index.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import type { Outcome, Reply } from '../../bot/reply/reply.js';
import { isProblem } from '../../bot/ground/problem.js';
import { shippedModel } from '../shipped.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const model = shippedModel();
const factsOf = (text: string): readonly string[] =>
  readText(model.reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

let members = 0;

/** Typed one after another, as members do. */
const typed = async (...lines: readonly string[]): Promise<Outcome> => {
  members += 1;
  const asker = member(`Tove${members}`);
  const ask = {
    asker,
    nowUtcMs: NOW,
    onError: (error: unknown) => {
      throw error;
    },
  };
  let outcome: Outcome | null = null;
  for (const line of lines) outcome = await runLine(deps, line, ask);
  if (outcome === null) throw new Error('nothing typed');
  return outcome;
};

const reply = async (...lines: readonly string[]): Promise<Reply> => {
  const outcome = await typed(...lines);
  if (isProblem(outcome)) throw new Error(outcome.message);
  return outcome;
};

const MISSES = 'goto misses every target, always 7 degrees';

describe('privacy', () => {
  it('in the path of a setting is no request for what is kept', async () => {
    const outcome = await typed(
      'the tablet app cannot connect over the wifi of the mount',
      'sorted, ipad settings then privacy then local network was turned off, on again and it connects',
    );
    expect(JSON.stringify(outcome)).not.toContain('What I keep about you');
  });

  it.each(['privacy', 'your privacy policy please'])('asked for by itself is one: %s', async (line) => {
    expect(JSON.stringify(await typed(line))).toContain('What I keep about you');
  });
});

describe("a provider's letters", () => {
  it.each(['the wifi icon shows BT-hub then', 'it went onto BTHub again', 'then the wifi says bt broadband'])(
    'are no radio: %s',
    (text) => expect(factsOf(text)).not.toContain('path.bluetooth'),
  );

  it('by themselves are one', () => expect(factsOf('laptop to mount by bt')).toContain('path.bluetooth'));

  it('no radio is guessed at where the way is a network', () => {
    const { read } = tellText(
      model,
      startWalk({ member: 'Tove', helper: null }),
      "not bluetooth. i'm on wifi",
      'member',
    );
    expect(read.facts.map(({ what, answer }) => `${what}.${answer}`)).toContain('path.network');
    expect(read.perhaps.map(({ what }) => what)).not.toContain('bt-listed');
  });
});

describe('a cause that was named', () => {
  it.each(['how can i stop the laptop going back to my home wifi', 'what can i do about it leaving the network'])(
    'has its remedy told at once: %s',
    async (line) => {
      const { notes } = await reply('windows laptop will not connect to the mount over its own wifi', line);
      expect(notes.join(' ')).toMatch(/joining by itself/u);
    },
  );

  it.each([
    'is there a setting on the iphone that lets the app on the network',
    'does my phone forbid it, like a permission',
  ])('is looked at before the opening is over: %s', async (line) => {
    const { notes } = await reply('iphone app cannot find the mount', line);
    expect(notes.join(' ')).toContain('Local Network');
  });
});

describe('ports', () => {
  it('are never stars, and two of Bluetooth are asked after', async () => {
    const asked = await reply('laptop will not connect by bluetooth', 'com7 and com8 are both listed. which one?');
    expect(stepOf(asked).id).toBe('bt-port');
  });

  it('named as two are not the same in program and system', () => {
    const { read } = tellText(model, startWalk({ member: 'Tove', helper: null }), 'com7 and com8 both there', 'member');
    expect(read.facts.map(({ what, answer }) => `${what}.${answer}`)).not.toContain('port-match.same');
  });

  it.each(['had a look, that port is not in use', 'com4 not in use'])('not in use are held by nobody: %s', (text) => {
    expect(factsOf(text)).not.toContain('message.denied');
  });

  it('in use are held', () => expect(factsOf('it says port in use')).toContain('message.denied'));
});

describe('what feeds the mount', () => {
  it('is no way to it', async () => {
    const asked = await reply('the mount resets whenever it slews', '12v brick from an old router');
    expect(asked.notes.join(' ')).not.toMatch(/USB-serial|network/u);
    expect(factsOf('12v brick from an old router').filter((fact) => fact.startsWith('path'))).toEqual([]);
  });
});

describe('where a miss is told', () => {
  it('a question that answers itself is an answer', async () => {
    const asked = await reply(MISSES, 'no numbers', 'where are they? all match i believe');
    expect(stepOf(asked).id).not.toBe('entries-screen');
    expect(JSON.stringify(asked)).not.toContain('the latitude');
  });

  it('the place that was asked for completes the numbers', async () => {
    const asked = await reply(MISSES, 'vega; 7 degrees east; site york', 'york england');
    expect(asked.notes.join(' ')).toContain('From your numbers');
  });

  it.each([
    ['some fist and a half, every time to the east', true],
    ['a fist and a half too low', false],
    ['a fist to the east', false],
  ])('a fist and a half to the side is an hour: %s', (text, isHour) => {
    expect(factsOf(text).includes('miss.one-hour')).toBe(isHour);
  });

  it.each([
    ['aligned again and 4 slews all in the eyepiece', true],
    ['aligned again and 2 of 4 slews in the eyepiece', false],
  ])('all of several in the eyepiece are a cure: %s', (text, isCured) => {
    expect(curedByDeed(text).isCured).toBe(isCured);
  });
});
