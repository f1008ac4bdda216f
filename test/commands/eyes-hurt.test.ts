/** An eye that is not well after a look comes before all else, by day and night, in a walk as well. The sentences are our own; other tongues from memory. */
import { describe, expect, it } from 'vitest';
import { isEyeHurt } from '../../bot/commands/asking/sentence/eyes-hurt.js';
import { plainHarm } from '../../bot/commands/asking/sentence/sun-harm.js';
import { cautionText } from '../../bot/cautions/cautions.js';
import { ask, realDeps } from './real-deps.js';

const heard = (said: string): boolean => isEyeHurt(plainHarm(said.toLowerCase()));

describe('an eye that is not well', () => {
  it.each([
    'scope has just swung by the bright thing and now my eye has a spot in it',
    'i have a dark spot in my eye since this afternoon',
    'i see a blob after looking through the scope at midday',
    'should i see a doctor, i swept across the sun',
    'i looked into the eyepiece by accident and it was facing the sun, what now',
    'my sons sight is blurry since he had the binoculars at lunch',
    'hab aus versehen durchs teleskop in die sonne geschaut',
    'me duele el ojo despues de mirar por el buscador a mediodia',
    "j'ai une tache dans l'oeil après avoir regardé dans le chercheur",
    "ho un puntino nero nell'occhio dopo il telescopio",
  ])('%s', (said) => {
    expect(heard(said)).toBe(true);
  });

  it.each([
    'my eyes are tired after looking through the scope all night',
    'i see a spot on jupiter after an hour at the eyepiece',
    'there is a blob in my picture since i cleaned the camera',
    'spots on the mirror of my telescope',
    'dark spot in the eyepiece field',
    'which eyepiece for the great red spot',
    'how many stars can the naked eye see',
    'sunspots seen this afternoon by eye',
  ])('is none: %s', (said) => {
    expect(heard(said)).toBe(false);
  });

  it('comes before a walk that waits', async () => {
    const deps = await realDeps();
    const now = Date.UTC(2026, 10, 28, 21);
    await ask(deps, 'triage linux permission denied on /dev/ttyUSB0', now);
    const said = await ask(deps, 'my eye has a spot since i swung past the bright thing', now);
    expect(JSON.stringify(said)).toContain(cautionText('eyes').slice(0, 40));
  });
});
