/**
 * A few words after a question of the sky, as members type them. What each line must come to is what the words say, by plain English;
 * no source beyond that.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { isProblem } from '../../bot/ground/problem.js';
import { MS_PER_MINUTE } from '../../bot/ground/durations.js';
import { ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 10, 20, 0);
const WILF: Asker = { ...ODALYS, memberId: 'console:wilf', displayName: 'Wilf' };

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '52.71,0.12' });
});

const say = async (line: string, asker = ODALYS, nowUtcMs = EVENING) =>
  runLine(deps, line, {
    asker,
    nowUtcMs,
    onError: (error) => {
      throw error;
    },
  });

/** The line that words after a question were taken for; null where they were taken for none. */
const followed = async (
  question: string,
  words: string,
  asker = ODALYS,
  nowUtcMs = EVENING,
): Promise<string | null> => {
  if (question !== '') await say(question, asker);
  const outcome = await say(words, asker, nowUtcMs);
  const notes = isProblem(outcome) ? [] : outcome.notes;
  return notes.map((note) => /^Taken to follow your last question: (.*)$/u.exec(note)?.[1]).find(Boolean) ?? null;
};

describe('what a few words change of the question before', () => {
  it.each([
    ['up M 42 site:Ely,England', 'and tomorrow?', 'up M 42 site:Ely,England on:tomorrow'],
    ['up M 42 on:friday', 'what about M81', 'up m81 on:friday'],
    ['is m42 up on friday', 'no i meant from norwich', 'up m42 on:friday first:seen site:norwich'],
    ['up M 42', 'and at 3am?', 'up M 42 at:3am'],
    ['up M 42', 'with binoculars?', 'up M 42 with:binoculars'],
    ['altitude Jupiter at:22:00', 'and Vega?', 'altitude vega at:22:00'],
    ['altitude Vega at:"tomorrow 21:00"', 'an hour later?', 'altitude Vega at:"tomorrow 22:00"'],
    ['up Saturn on:friday', 'same for saturday', 'up Saturn on:saturday'],
    ['what galaxies can i see', 'and from a dark site?', 'tonight kind:galaxies sky:dark'],
    ['tonight kind:galaxy', 'what about clusters', 'tonight kind:clusters'],
    ['dark', 'and on sunday?', 'dark on:sunday'],
    ['tonight', 'in Cygnus?', 'tonight constellation:Cygnus'],
    ['up M 51 on:friday', 'not M51, M101', 'up m101 on:friday'],
    ['moon', 'and on the 20th?', 'moon at:2026-12-20'],
    ['up M 31 on:tomorrow', 'how high will it be at 9pm', 'altitude m 31 at:"tomorrow 9pm"'],
    [
      'up M 31 site:52.71,0.12 with:binoculars',
      'when does it set',
      'up m 31 first:set site:52.71,0.12 with:binoculars',
    ],
  ])('%s, then "%s"', async (question, words, line) => {
    expect((await followed(question, words))?.toLowerCase()).toBe(line.toLowerCase());
  });

  it('follows what followed', async () => {
    await say('up M 42');
    await say('and tomorrow?');
    expect(await followed('', 'and from Norwich?')).toBe('up M 42 on:tomorrow site:norwich');
  });
});

describe('what is no question of the sky', () => {
  it.each([
    'and tomorrow i go to work',
    'thanks!',
    'what about the usb cable',
    'it does not track',
    'it still wont connect',
    'saturday is fine with me',
    'see you tomorrow',
    'tomorrow i will bring my binoculars',
    'and now it works',
    'and now nothing',
    'and the port?',
    'where did you get it from',
    'is it up to date?',
    'it is 5 degrees off',
    'same here',
    'no sound',
    'they have none in stock',
    'i have a 200 mm newtonian',
    'my bad?',
    'where do i switch it on',
    'is it a setting?',
    'how dangerous is it?',
    'where it shows, it has nothing to do with nothing.',
    'what about you?',
    '@Wilf and tomorrow?',
  ])('"%s"', async (words) => {
    expect(await followed('up M 42', words)).toBeNull();
  });
});

describe('whose question is followed', () => {
  it('is never another member’s, nor one asked elsewhere', async () => {
    await say('up M 42 site:Ely,England');
    expect(await followed('', 'and tomorrow?', WILF)).toBeNull();
    expect(await followed('', 'and tomorrow?', { ...ODALYS, channelId: 'another' })).toBeNull();
    expect(await followed('', 'and tomorrow?', { ...ODALYS, clubId: 'another' })).toBeNull();
  });

  it('is forgotten after some minutes, and with all else', async () => {
    await say('up M 42');
    expect(await followed('', 'and tomorrow?', ODALYS, EVENING + 30 * MS_PER_MINUTE)).toBeNull();
    await say('up M 42');
    await say('forget confirm:yes');
    expect(await followed('', 'and tomorrow?')).toBeNull();
  });

  it('stays the asker’s alone where their own site was used', async () => {
    await say('site add cottage 52.1,0.3');
    const first = await say('up M 42 site:cottage');
    const second = await say('and tomorrow?');
    expect([first.audience, second.audience]).toEqual(['asker', 'asker']);
    await say('forget confirm:yes');
  });
});

const ESMA: Asker = {
  ...ODALYS,
  memberId: 'console:esma',
  displayName: 'Esma',
  clubId: 'console:brackwater',
  channelId: 'mole',
};

describe('a star that is not to be had, after stars to align on', () => {
  it.each([
    ["can't see Vega, tree", 'Vega'],
    ['what about without capella', 'Capella'],
    ['not Capella', 'Capella'],
    ['i cant see vega', 'Vega'],
  ])('%s', async (words, star) => {
    expect(await followed('which stars to align on', words, ESMA)).toMatch(
      new RegExp(`^alignment\\b.*not:"?${star}`, 'u'),
    );
  });

  it('leaves out the ones before as well, and no other question has a use for it', async () => {
    await followed('which stars to align on', 'not Vega', ESMA);
    expect(await followed('', 'and not Capella', ESMA)).toMatch(/not:"Vega, Capella"/u);
    expect(await followed('how high is Capella', "can't see Capella", ESMA)).toBeNull();
  });
});

it('what is not wanted of a question is no second question', async () => {
  const outcome = await say('what should i align on at 8pm, dont want the moon near', ESMA);
  expect(!isProblem(outcome) && outcome.title).toMatch(/^Stars to align on/u);
});

describe('beside a walk', () => {
  it('only what can be nothing else is followed, and nothing once words were said to the walk', async () => {
    await say('triage do:new the port is missing');
    await say('up Vega');
    expect(await followed('', 'and tomorrow?')).toBe('up Vega on:tomorrow');
    expect(await followed('up Vega', 'when does it set?')).toBe('up vega first:set');
    for (const words of ['does it show up?', 'tomorrow', 'is it visible', 'no', 'where is it?', 'with binoculars'])
      expect(await followed('up Vega', words), words).toBeNull();
    await say('up Vega');
    await say('windows 11');
    expect(await followed('', 'and tomorrow?')).toBeNull();
  });
});
