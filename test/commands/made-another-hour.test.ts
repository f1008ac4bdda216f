/** "Make it half 6", "7 instead", "later, say 10": a reminder, or a question of an hour, is for the other hour from then on. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { timesChanged } from '../../bot/commands/asking/following/hour-changed.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps } from './real-deps.js';

const AFTERNOON = Date.UTC(2026, 11, 12, 16, 30);

/** What the last line of a talk was answered. */
const last = async (lines: readonly string[]): Promise<string> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  let told = '';
  for (const [i, line] of lines.entries()) {
    const outcome = await ask(deps, line, AFTERNOON + i * 20_000);
    told = isProblem(outcome)
      ? outcome.message
      : [outcome.summary, ...outcome.facts.map(({ label }) => label)].join(' ');
  }
  return told;
};

describe('a reminder is set anew', () => {
  it.each([
    ['make it half 6', '18:30'],
    ['make it 7 instead', '19:00'],
    ['make it 7', '19:00'],
    ['no, make it 7', '19:00'],
    ['can you make it 7pm', '19:00'],
    ['change it to 7:15', '19:15'],
    ['move it to quarter past 7', '19:15'],
    ['later, say 10', '22:00'],
    ['a bit later, like 7', '19:00'],
    ['earlier, say 5', '17:00'],
    ['actually 8', '20:00'],
    ['7 instead', '19:00'],
    ['8 would be better', '20:00'],
    ['no, at 7', '19:00'],
    ['at 7 please', '19:00'],
    ['i meant 7', '19:00'],
    ['sorry, i meant half 7', '19:30'],
    ['an hour later', '19:00'],
    ['make it an hour later please', '19:00'],
    ['half an hour earlier', '17:30'],
    ['push it back an hour', '19:00'],
    ['bring it forward half an hour', '17:30'],
    ['make it midnight', '00:00'],
  ])('%s', async (line, clock) =>
    expect(await last(['remind me at 6 to cap the scope', line])).toMatch(
      new RegExp(`Dec 2026, ${clock} GMT, to you: Cap the scope`, 'u'),
    ),
  );

  it.each(['tomorrow instead', 'make it tomorrow', 'make it sunday', 'move it to tomorrow'])(
    'for another day: %s',
    async (line) =>
      expect(await last(['remind me at 6 to cap the scope', line])).toMatch(
        /^Sun 13 Dec 2026, 18:00 GMT, to you: Cap the scope/u,
      ),
  );

  it('and the one before is not said any more', async () =>
    expect(await last(['remind me at 6 to cap the scope', 'make it 7', 'no, half 8', 'remind list'])).toMatch(
      /^1 is waiting\. Sat 12 Dec 2026, 20:30 GMT/u,
    ));

  it('in the same half of the day', async () =>
    expect(await last(['remind me at 6am to park', 'make it 7'])).toMatch(/^Sun 13 Dec 2026, 07:00/u));

  it('from now, where it was from now', async () =>
    expect(await last(['remind me in 20 minutes to swap the battery', 'make it 40'])).toMatch(
      /^Sat 12 Dec 2026, 17:1[01] GMT/u,
    ));

  it('that waits for a target, so long before, or at an hour', async () => {
    expect(await last(['remind me when mars rises', 'make it 10 min before'])).toMatch(
      /23:44 GMT, to you: Mars passes/u,
    );
    expect(await last(['remind me when mars rises', 'make it 11pm'])).toMatch(
      /23:00 GMT, to you: It is 23:00 GMT: Mars/u,
    );
  });

  it('every week', async () =>
    expect(await last(['weekly reminder on sundays 6pm clean the eyepieces', 'make it 7pm'])).toMatch(
      /^Every Sunday at 19:00/u,
    ));

  it('whose hour was past is asked for again', async () =>
    expect(await last(['remind me at 3pm to eat', 'make it 7pm'])).toMatch(/19:00 GMT, to you: Eat/u));

  it.each(['make it so', 'make it bigger', '7 cables instead', 'later', 'no 7', 'make tea', 'later, say hi to Bram'])(
    'by nothing that names no hour: %s',
    async (line) =>
      expect(await last(['remind me at 6 to cap the scope', line, 'remind list'])).toMatch(
        /^1 is waiting\. Sat 12 Dec 2026, 18:00/u,
      ),
  );

  it('not after another question: then that is meant', async () =>
    expect(await last(['remind me at 6 to cap the scope', 'is saturn up', 'make it 10'])).toMatch(
      /26° high .* at 22:00/u,
    ));
});

describe('a question of the sky is asked of another hour', () => {
  it.each([
    ['make it half 10', '22:30'],
    ['make it 7 instead', '19:00'],
    ['later, say 10', '22:00'],
    ['8 instead', '20:00'],
    ['actually 11', '23:00'],
    ['earlier, say 6', '18:00'],
    ['make it an hour later', '22:00'],
    ['no, i said 10', '22:00'],
    ["let's say 10pm", '22:00'],
  ])('%s', async (line, clock) =>
    expect(await last(['is saturn up at 9', line])).toMatch(new RegExp(`high .* at ${clock}`, 'u')),
  );
});

describe('which half of the day is meant', () => {
  it.each([
    ['make it 7', '06:00', '07:00'],
    ['make it 7', '18:00', '19:00'],
    ['make it 7pm', '06:00', '7pm'],
    ['make it half 12', '22:00', '00:30'],
    ['make it 1', '23:00', '01:00'],
  ])('%s after %s', (words, before, hour) =>
    expect(timesChanged(words, { night: null, hour: before }, AFTERNOON)?.hour).toBe(hour),
  );
});
