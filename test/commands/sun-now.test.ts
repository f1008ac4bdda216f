/** While it is happening nobody needs to be told what may be done, but what to do; and what follows a warning is heard as such. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 20, 10);
/** The Sun is up in Leeds. */
const NOON = Date.UTC(2026, 10, 27, 12, 30);
const STOP = /^Stop: eyes away/u;

const lines = readFileSync(new URL('sun-now.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const alone = (channelId: string) => ({ ...ODALYS, memberId: `console:${channelId}`, channelId });
const wordsOf = (outcome: Outcome): string => (isProblem(outcome) ? outcome.message : outcome.summary);

/** Each said in turn by one member in Leeds; the last answer's words. */
const lastOf = async (said: readonly string[], nowUtcMs: number): Promise<string> => {
  const asker = alone(`${nowUtcMs} ${said.join('; ')}`);
  await answer(deps, 'site add garden 53.8,-1.55', nowUtcMs, asker);
  let words = '';
  for (const line of said) words = wordsOf(await ask(deps, line, nowUtcMs, asker));
  return words;
};

describe('the Sun in the tube', () => {
  it.each(lines.filter((line) => !line.startsWith('~')))('%s', async (line) => {
    // The place that is known may be another than theirs: it is said by night too.
    for (const nowUtcMs of [NOON, EVENING]) expect(await lastOf([line], nowUtcMs)).toMatch(STOP);
  });

  it('comes before a walk that waits', async () => {
    expect(
      await lastOf(['triage do:new goto missed by 15 degrees east', 'mount went past the sun, cap was off'], NOON),
    ).toMatch(STOP);
  });

  it('comes first as well where a form of a walk tells of it', async () => {
    const asker = alone('a form');
    const { walkId } = (await answer(deps, 'triage do:new goto missed by 15 degrees east', NOON, asker)).data as {
      walkId: string;
    };
    const told = await answer(deps, `triage walk:${walkId} text:"the mount just slewed past the sun"`, NOON, asker);
    expect(told.notes.join(' ')).toMatch(/Stop: eyes away/u);
  });

  it.each(lines.filter((line) => line.startsWith('~')).map((line) => line.slice(2)))('is not: %s', async (line) => {
    for (const nowUtcMs of [NOON, EVENING]) expect(await lastOf([line], nowUtcMs)).not.toMatch(STOP);
  });
});

describe('what has an answer of its own', () => {
  // Common practice, no source.
  it.each([
    ['herschel wedge on my 100 mm refractor?', /^Only as its maker says: .*refractors alone/u],
    ['can i use a solar wedge in a newtonian', /^Only as its maker says: .*Never on a telescope with mirrors/u],
    ['the dark filter that says SUN and screws into the eyepiece', /^No, never: .*Break it/u],
    ['flats at dusk, how far from the sun do i point', /^Only with the Sun below the horizon/u],
    ['can i go to bed while the telescope tracks', /^Only if it stops and parks/u],
    ['scope still trackin, im goin to bed, ok?', /^Only if it stops and parks/u],
    ['is it ok to leave the rig imaging all night unattended', /^Only if it stops and parks/u],
    ['sun filter for my 8 inch', /^Only with a filter over the front/u],
    ['i want to see the sun spots', /^Only with a proper full-aperture/u],
    ['ok to align on sun', /^No[:,]/u],
    [
      'during totality can i take off the glasses?',
      /^Not while any of the Sun shows.*only inside the path of totality/u,
    ],
    ['can i remove the filter during annularity', /^Not while any of the Sun shows/u],
    ['dad wants to point the telescope at venus now, where do we point', /^No, never sweep/u],
    ['binoculars at 9 in the morning for mercury', /^No, never sweep/u],
    ['venus in 10x50s half past 8 tomorrow morning', /^No, never sweep/u],
    ['venus with bins at 10am', /^No, never sweep/u],
    ['my niece is aiming the dob at the bright thing', /^No/u],
    ['the boys point the scope at that big bright light outside', /^No/u],
    ['phone held to the eyepiece for the sun', /^No, not without/u],
    ["j'ai regarde le soleil dans le chercheur", /^If anyone has looked/u],
    ["j'ai regardé le soleil deux secondes dans le chercheur", /^If anyone has looked/u],
    ['patrzyłem na słońce przez lunetę', /^If anyone has looked/u],
    ['meine tochter hat ohne filter in die sonne reingeschaut', /^If anyone has looked/u],
    ['dobson without goto, which way do i push it to find venus right now', /^No, never sweep/u],
  ])('by day: %s', async (line, told) => {
    expect(await lastOf([line], NOON)).toMatch(told);
  });
});

describe('what follows a warning, or an answer near the Sun', () => {
  it.each([
    [['can i look at the sun', 'what if i just look quick'], /^No/u],
    [['can i look at the sun', 'and with my phone'], /^No: not with a phone or a camera either/u],
    [['can i look at the sun', 'is it safe yet'], /^No/u],
    [['can i look at the sun', 'he already looked'], /^If anyone has looked/u],
    [['can i look at the sun', 'shes crying, her eye hurts'], /^If anyone has looked/u],
    [['can i look at the sun', 'er sieht einen fleck'], /^If anyone has looked/u],
    [['can i look at the sun', 'its melting'], /^Stop: eyes away/u],
    [['can i look at the sun', 'oh it just fell off'], /^Stop: eyes away/u],
    [['can i look at the sun', 'what if its cloudy'], /^No/u],
    [['can i look at the sun', 'its cloudy so its dim enough to look through the scope'], /^No: cloud/u],
    [['can i look at the sun', 'what if its low and red at sunset'], /^No: not while it is low/u],
    [['can i look at the sun', 'its only a crescent left'], /^No: only/u],
    [['can i look at the sun', 'a few layers of smoked glass then'], /^No: nothing of that/u],
    [['can i look at the sun', 'and when the diamond ring comes back'], /^Not while any/u],
    [['can i look at the sun', 'gonna do it only 5 min then'], /full-aperture|over the front aperture/u],
    [['can i look at the sun', 'sunglasses then?'], /^No/u],
    [['can i look at the sun', 'is it safe if i project it'], /^No, not as a first try/u],
    [['sun Venus at:"tomorrow 10am"', 'just sweep about til i see it?'], /^No, never sweep/u],
    [['sun Venus', 'is it safe'], /^Venus is \d+° from the Sun/u],
    [['up Mercury', 'can i sweep for it with binos'], /^No, never sweep/u],
  ])('%j', async (said, told) => {
    expect(await lastOf(said, NOON)).toMatch(told);
  });

  it('is of the night again once that is said', async () => {
    expect(await lastOf(['can i look at the sun', 'and with binoculars tonight'], NOON)).not.toMatch(/^No/u);
    expect(await lastOf(['can i look at the sun', 'what about m42 with my 8 inch'], EVENING)).not.toMatch(/^No/u);
  });

  it('of the Moon a quick look hurts nobody', async () => {
    expect(await lastOf(['up moon', 'just a quick look'], EVENING)).not.toMatch(/^No/u);
  });
});

describe('what was not followed and names the Sun', () => {
  it.each(['kann die sonne meiner kamera etwas tun', 'sun with my home built thingamajig, thoughts'])(
    '%s',
    async (line) => {
      expect(await lastOf([line], NOON)).toMatch(/full-aperture|over the front aperture/u);
    },
  );
});
