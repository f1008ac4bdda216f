/** Towns that are called like words of every day: Reading, Nice, Orange, Bath, Tea, Normal. The word is a town where it is said as one. Towns: GeoNames. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps, strangers } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 12, 20, 30);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('theodric');
/** All that is said, the site too. */
const toldOf = async (line: string): Promise<string> => {
  const outcome = await ask(deps, line, EVENING, stranger());
  return isProblem(outcome)
    ? [outcome.message, ...(outcome.choices ?? []).map(({ run }) => run)].join(' ')
    : [outcome.title, outcome.summary, ...outcome.facts.map(({ value }) => value), ...outcome.notes].join(' ');
};

const A_TOWN = /Reading|Nice,|Orange,|Bath,|Tea,|Normal|South Dakota|California|England|France|GB\b/u;

describe('the word alone is no place', () => {
  it.each([
    'i am reading the manual, is saturn up',
    "i'm reading about saturn, is it up tonight",
    'is mars up, reading about it now',
    'reading the manual',
    'nice',
    'that was nice',
    'what a nice night, is jupiter up',
    'is it a nice night for galaxies',
    'is jupiter nice tonight',
    'is m42 any nice in binoculars',
    'whats nice tonight',
    'an orange star',
    'is an orange star up tonight',
    'why is the moon orange',
    'is the moon orange tonight',
    'how orange is betelgeuse',
    'is mars red or orange',
    'is mars more of an orange',
    'had tea and cake, what is up tonight',
    'is jupiter worth a look after tea',
    'before tea is venus up',
    'after my bath is saturn still up',
    'is saturn up after a bath',
    'can i see saturn from here in normal conditions',
    'how does m13 look in normal skies',
    'is the moon up in nice weather',
  ])('%s', async (line) => expect(await toldOf(line)).not.toMatch(A_TOWN));
});

describe('said as a town it is one', () => {
  it.each([
    ['is saturn up tonight from Reading', /Reading, England/u],
    ['is saturn up in reading', /Reading, England/u],
    ['saturn tonight reading', /Reading, England/u],
    ['sunset in reading', /Reading, England/u],
    ['is saturn up in bath', /Bath/u],
    ['is jupiter up bath', /Bath/u],
    ['where is vega from bath', /Bath/u],
    ['is Saturn visible in Bath please', /Bath/u],
    ['is mars up tonight in nice', /Nice/u],
    ['where is jupiter from Nice', /Nice/u],
    ['moonrise in orange, california', /PST/u],
    ['is the moon up in orange nsw', /AEDT/u],
    ["what's up from tea", /Tea, South Dakota/u],
    ['is orion up from normal, illinois', /CST|Normal/u],
  ])('%s', async (line, told) => expect(await toldOf(line)).toMatch(told));
});
