/**
 * Looking at the Sun with a filter made for it over the whole front: yes, with the usual cautions. Whatever else is held before it, or not there, keeps
 * the No. Common practice of solar observers, no source; ISO 12312-2:2015 is of glasses for bare eyes.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { realDeps, strangers, talk } from './real-deps.js';

const HOURS = [Date.UTC(2026, 11, 12, 12, 30), Date.UTC(2026, 11, 12, 20, 30)];
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('ragnhild');
const answersTo = async (lines: readonly string[]): Promise<readonly string[]> => {
  const last: string[] = [];
  for (const nowUtcMs of HOURS) {
    const outcome = (await talk(deps, lines, nowUtcMs, stranger())).at(-1);
    if (outcome === undefined) throw new Error('nothing was asked');
    last.push(isProblem(outcome) ? outcome.message : `${outcome.title}. ${outcome.summary}`);
  }
  return last;
};

const isYes = /^Yes, while a full-aperture solar filter that its maker rates for the Sun is fixed over the front/u;

describe('with a filter for the Sun over the whole front one may look', () => {
  it.each([
    'with a proper white-light filter over the front, can I look at the sun?',
    'can i look at the sun with a solar filter on the front of the scope',
    'full aperture solar filter on my dob, ok to look at the sun?',
    'solar filter fixed over the front and finder capped, can the kids look at the sun',
    'is it safe to view the sun through binoculars with solar film over both fronts',
    'is it ok to see sunspots with a certified solar filter over the aperture',
    'can i photograph the sun with a certified solar filter over the front of the lens',
    'can i align on the sun with the front solar filter on',
    'got a full-aperture filter on, safe to look at the sun now?',
    'can I point at the sun with a sun filter over the telescope',
    'my refractor has a glass solar filter over the objective. ok for the sun?',
    'can I look at the sun, finder off, full aperture solar filter in front',
  ])('%s', async (line) => {
    for (const told of await answersTo([line])) expect(told).toMatch(isYes);
  });

  it('said after the No as well', async () => {
    for (const told of await answersTo(['can i look at the sun', 'with a proper full aperture filter on the front?']))
      expect(told).toMatch(isYes);
  });

  it.each([
    'how long can i look at the sun with a full aperture filter on',
    'is it dangerous to look at the sun with a full aperture filter',
  ])('and a Yes is no answer to %s', async (line) => {
    for (const told of await answersTo([line])) expect(told).toMatch(/^Only with a proper full-aperture solar filter/u);
  });
});

describe('no Yes is said', () => {
  it.each([
    'can i look at the sun',
    'can i look at the sun with a filter that screws in the eyepiece',
    'can i look at the sun with a solar filter on the front of the eyepiece',
    'solar filter at the eyepiece, scope at the sun, ok?',
    'can i look at the sun without the full aperture filter',
    'no full aperture filter but its cloudy, can i look at the sun',
    'i took the full aperture filter off, can i look at the sun at sunset',
    'can i look at the sun with my old solar filter on the front',
    'my full aperture filter has a pinhole, can i look at the sun',
    'solar filter on the front is scratched, ok to look at the sun',
    'solar filter on the front, can i look through the finder at the sun',
    'solar filter on the scope front, what about looking at the sun in the finder',
    'solar filter in front of my eye, can i look at the sun through the scope',
    'nd filter over the front, can i look at the sun',
    'welding glass over the front of the scope as a sun filter, ok?',
    'eclipse glasses over the front of the scope, ok for the sun?',
    'can i look at the sun with a moon filter over the front',
    'can i look at the sun if the solar filter only covers half the front',
    'solar filter over one side of the binoculars, can i look at the sun',
    'can i look at the sun with solar film over the front that covers half the lens',
    'my solar film over the front slipped off, can i look',
    'solar film over the front of one side only, ok?',
    'can i look, old solar film over the front is torn',
    'solar film over the front but the finder is open',
    'can i use a home made solar filter over the front to see the sun',
    'i dont have a full aperture filter can i look at the sun quickly',
    'the solar filter on the front fell off, can i look at the sun',
    'a solar filter on the front of my friends scope, can i look at the sun in my scope',
    'rescue blanket as a solar filter over the front, look at the sun?',
    'a proper filter over the front or sunglasses, can i look at the sun with sunglasses',
    'should the full aperture filter be left off to see the sun',
  ])('%s', async (line) => {
    for (const told of await answersTo([line])) {
      expect(told).not.toMatch(/^Yes\b/u);
      expect(told).toMatch(/full-aperture solar filter|never|whole and without a scratch/iu);
    }
  });
});

describe('what is asked of the guard itself is answered with how it has to be', () => {
  it.each([
    'how to test a solar filter for holes',
    'how do i clean my solar filter',
    'which solar film is right for looking',
    'what solar filter do i buy',
    'how do i fix a solar filter so the wind cant lift it',
    'where can i buy solar film',
    'is there a test for my solar filter',
  ])('%s', async (line) => {
    for (const told of await answersTo([line])) expect(told).toMatch(/^Only with a filter over the front aperture/u);
  });

  it.each([
    'how do i check eclipse glasses',
    'is there a list of what to check on eclipse glasses',
    'how are eclipse glasses marked',
  ])('%s', async (line) => {
    for (const told of await answersTo([line])) expect(told).toMatch(/^Yes, for bare eyes alone: eclipse glasses/u);
  });

  it.each([
    'which is worse for the sun, no filter or a moon filter',
    'my solar filter has a hole, can i tape it',
    'what happens if i look without a solar filter',
  ])('but never where somebody would look without: %s', async (line) => {
    for (const told of await answersTo([line])) expect(told).not.toMatch(/^(?:Yes|Only with a filter over)/u);
  });
});
