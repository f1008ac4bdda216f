/** No walk begins, and none takes an answer, from words of the sky; its list stands once under other answers. Common practice, no source, but where said. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20, 10);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const member = (name: string) => ({ ...ODALYS, memberId: `console:${name}`, channelId: name });
const isOfWalk = (outcome: Outcome): boolean => !isProblem(outcome) && typeof outcome.data['walkId'] === 'string';
const textOf = (outcome: Outcome): string =>
  isProblem(outcome) ? outcome.message : [outcome.title, outcome.summary, ...outcome.notes].join('\n');

/** The last of several lines said by one member. */
const last = async (name: string, ...lines: readonly string[]): Promise<Outcome> => {
  let outcome: Outcome | null = null;
  for (const line of lines) outcome = await ask(deps, line, NOW, member(name));
  return outcome as Outcome;
};

describe('no walk begins from words without a fault', () => {
  it.each([
    ['ok and in a small scope', /M 31.*80 mm|M 31/su],
    ['when is M83 30 degrees up before dawn', /M 83/u],
    ['how long can I expose unguided with 5 arcmin polar error', /″/u],
    ['sky flats tomorrow morning, when should I start', /−6°/u],
    ['is half a degree of error ok for visual', /./u],
    ['i have a 600mm scope and 4.63um pixels', /./u],
  ])('%s', async (line, says) => {
    const outcome = await last(line, 'M 31', line);
    expect(isOfWalk(outcome)).toBe(false);
    expect(textOf(outcome)).toMatch(says);
  });

  it.each(['my handset is dead', 'usb adapter not recognised on windows 11', 'asked it for vega and got a hedge'])(
    'and does from: %s',
    async (line) => {
      expect(isOfWalk(await last(line, line))).toBe(true);
    },
  );
});

describe('beside a walk', () => {
  const OPENS = 'the mount wont connect to my laptop';

  it.each([
    ['m42 up', /^M 42/u],
    ['LMC tonight', /Magellanic/u],
    ['and m45?', /^M 45/u],
    ['the moon', /^The Moon/u],
    ['when does it get lite again', /08:04/u],
    ['slew to venus at 2pm tomorrow from Sirius, is it safe', /Sun/u],
  ])('goes where it belongs: %s', async (line, says) => {
    const outcome = await last(line, OPENS, line);
    expect(isOfWalk(outcome)).toBe(false);
    expect(textOf(outcome)).toMatch(says);
  });

  it.each(['its windows 11', 'through the hand controller', 'not sure', 'wifi', 'the green light is on'])(
    'stays with the walk: %s',
    async (line) => {
      expect(isOfWalk(await last(line, OPENS, line))).toBe(true);
    },
  );

  it('says in a line what it waits for, and the way back to its list', async () => {
    const first = await last('twice', OPENS, 'is saturn up');
    expect(textOf(first)).toContain(
      'Your walk still waits: How does the computer reach the mount? For its list type “back”.',
    );
    expect(first.choices?.map(({ label }) => label)).toEqual(['Back to the walk']);
    expect(textOf(await last('twice', 'back'))).toContain('How does the computer reach the mount?');
  });

  it.each(['not now', 'not now thanks', 'another time', 'maybe later'])('waits at: %s', async (line) => {
    expect(textOf(await last(line, OPENS, line))).toContain('The walk waits where it was');
  });

  it.each(['nvm', 'never mind', 'forget about it'])('ends at: %s', async (line) => {
    expect(textOf(await last(line, OPENS, line))).toContain('This walk has ended');
  });
});

describe('a polar axis so far off', () => {
  // M. A. Covington, Astrophotography for the Amateur, appendix B: 60″ × 2π/1436.07 = 0.2625″ a minute for each arcminute.
  it.each([
    ['how long can I expose unguided with 5 arcmin polar error', /about 1\.5 min unguided.*1\.3″ a minute/u],
    ['what drift comes from 2 arcmin of polar error in 10 minutes', /up to 5\.3″ of drift/u],
    ["is 10' off the pole good enough for 30 second exposures", /^Good enough for 30 s: up to 1\.3″/u],
    ['does 20 arcmin polar error matter for 2 minute subs', /^Too far off for 2 min: up to 11″|10\.5″/u],
  ])('%s', async (line, says) => {
    expect((await answer(deps, line, NOW, member(line))).summary).toMatch(says);
  });
});

// Sunrise 08:04, sunset 15:49 at 54.97° N, 2.10° W: NOAA's solar equations, reckoned apart.
describe('the Sun’s hours', () => {
  it.each(['sun up when', 'when is sunup', 'when does it get light', 'when does it get lite', 'what time is daybreak'])(
    '%s',
    async (line) => {
      expect((await answer(deps, line, NOW, member(line))).summary).toMatch(/The Sun rises next on .* 08:04/u);
    },
  );

  it.each([
    ['it runs unattended until 7am, is that after sunrise?', /^No: 07:00 GMT is 1 h 4 min before sunrise/u],
    ['is 9am after sunrise', /^Yes: 09:00 GMT is 56 min after sunrise/u],
    ['is 4pm before sunset', /^No: 16:00 GMT is 11 min after sunset/u],
  ])('%s', async (line, says) => {
    const { summary, level, notes } = await answer(deps, line, NOW, member(line));
    expect(summary).toMatch(says);
    expect(level).toBe('caution');
    expect(notes.join(' ')).toMatch(/Cap the tube and the finder/u);
  });
});
