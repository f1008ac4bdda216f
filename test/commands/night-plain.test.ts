/**
 * Questions of the night in plain words and what they come to: the Moon beside a planet, its face, the Sun's days, dates, what hides the
 * sky, the way from a star, numbers of an eyepiece that are followed. The readings are plain English; each figure has its source beside it.
 */
import { describe, expect, it } from 'vitest';
import { plainQuestion } from '../../bot/commands/asking/plain-question.js';
import type { Asker } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { resolvePlace, type Spot } from '../../bot/places/index.js';
import { answer, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 18);
const FEN: Spot = { latitudeDeg: 52.4, longitudeDeg: 0.26 };
const PLAINS: Spot = { latitudeDeg: 39.74, longitudeDeg: -104.99 };
const deps = await realDeps({ clubSiteText: '52.40,0.26' });
const known = (usual: Spot) => ({ ...deps, siteNames: [], nowUtcMs: NOW, usual });

const lineOf = (sentence: string, usual = FEN): string => {
  const read = plainQuestion(sentence, known(usual));
  if (read === null) return '-';
  return 'line' in read ? read.line : 'an answer';
};

describe('questions of the night in plain words', () => {
  it.each([
    ['when is the moon near jupiter', 'ahead meetings about:"moon and jupiter"'],
    ['moon by saturn', 'ahead meetings about:"moon and saturn"'],
    ['moon close to spica', 'ahead meetings about:"moon and spica"'],
    ['the moon and jupiter they meet in december?', 'ahead meetings about:"moon and jupiter" in:december'],
    ['moon near jupiter tonight?', 'ahead meetings on:tonight about:"moon and jupiter"'],
    ['how far is the moon from jupiter at 3am', 'compare moon at:3am other:jupiter first:apart'],
    ['will moonlight spoil m33', 'up m33 first:moonlight'],
    ['which craters are on the terminator tonight', 'moon first:terminator'],
    ['is copernicus in light', 'moon feature:Copernicus'],
    ['lunar x in december?', 'moon at:"1 december" feature:"Lunar X"'],
    ['can i see the straight wall this week', 'moon feature:"Straight Wall"'],
    ['is plato lit tonight', 'moon feature:Plato'],
    ['earthshine morning when', 'moon first:earthshine'],
    ['hercules tonight', 'up hercules on:tonight'],
    ['does the sun come up at all now', 'dark first:sun-up'],
    ['when does the sun come back', 'dark first:sun-back'],
    ['polar night when does it end', 'dark first:sun-back'],
    ['day length tomorrow', 'dark on:tomorrow first:day-length'],
    ['winter solstice 2026', 'ahead seasons about:"winter solstice" in:2026'],
    ['equinox when is it', 'ahead seasons about:equinox'],
    ['when is venus at its brightest this winter', 'ahead planets about:venus best:yes'],
    ['m31 m33 which is better placed at 9', 'compare m31 at:21:00 other:m33 first:higher'],
    ['m42 or m45 at 21:00 which first', 'compare m42 at:21:00 other:m45 first:sooner'],
    ['horizon blocked till 30 deg in east, when jupiter clears it', 'up jupiter above:30'],
    ['hedge up to 15° in the west, when does saturn go behind it', 'up saturn above:15'],
    ['how do i find m1', 'up m1 first:find'],
    ['star hop to m13?', 'up m13 first:find'],
    ['the day after xmas what planets', 'tonight on:"26 december" kind:planets'],
    ['orion nebula on 31/12', 'up orion nebula on:"31 december"'],
    ['remind me at 10pm to check dew', 'remind at:10pm say:"check dew"'],
  ])('%s', (sentence, line) => expect(lineOf(sentence)).toBe(line));

  it('reads a date in figures as the country writes it, and says so where it may be read in two ways', () => {
    expect(lineOf('saturn on 06/12 at 8pm')).toBe('up saturn on:"6 december" at:8pm');
    expect(lineOf('saturn on 06/12 at 8pm', PLAINS)).toBe('up saturn on:"12 june" at:8pm');
    const read = plainQuestion('on 12/01 saturn at 8pm', known(FEN));
    expect(read !== null && 'note' in read ? read.note : '').toMatch(/^Took 12\/01 to be 12 january, the day first/u);
    for (const other of ['what is 130/650', 'm13 24/7', 'is 1/4 wave good'])
      expect(lineOf(other), other).not.toMatch(/ on:/u);
  });
});

const someone = (line: string): Asker => ({ ...ODALYS, memberId: `console:${line}`, channelId: `console ${line}` });
const ask = (line: string, who = line, nowUtcMs = NOW) => answer(deps, line, nowUtcMs, someone(who));

describe('what such questions are answered with', () => {
  it('says before all else that a day was not understood', async () => {
    const { summary, level } = await ask('m31 on diwali');
    expect(summary).toMatch(/^I could not read “diwali” as a day/u);
    expect(level).not.toBe('good');
  });

  it('is no list of a town that is called like a word of the sky', async () => {
    for (const sentence of ['moon set 2 dec', 'moon set tomorrow', 'when is the moon near jupiter']) {
      const { notes } = await ask(sentence);
      expect(notes.join(' '), sentence).toContain('Site: 52.40° N');
    }
  });

  it('begins with what stands better of two, not with what sets hours later', async () => {
    // PyEphem 4.2.1 from 69.65° N, 18.96° E at 20:00 UTC: M 42 at 5°, M 45 at 41°.
    const far = await realDeps({ clubSiteText: '69.65,18.96' });
    const { summary } = await answer(far, 'm42 or m45 at 21:00 which first', NOW, someone('first of two'));
    expect(summary).toMatch(/^M 45 first: 41° high/u);
  });

  it('tells the way to M 1 from ζ Tauri (Tianguan), 1.1° to its north-west (Hipparcos, OpenNGC)', async () => {
    const { summary } = await ask('how do i find m1');
    expect(summary).toMatch(/to Tianguan \(mag 3\.0\); from it 1\.1° north-west/u);
  });

  it('has the Magellanic Clouds plain to the naked eye (integrated V 0.3 and 2.3, from memory)', async () => {
    const south = await realDeps({ clubSiteText: '-45.87,170.50' });
    for (const cloud of ['up LMC', 'up SMC', 'up LMC with:eyes']) {
      const { facts } = await answer(south, cloud, NOW, someone(cloud));
      expect(facts.find(({ label }) => label === 'Shows')?.value, cloud).toMatch(/^(?:plain|easy) to the naked eye/u);
    }
  });

  it('follows an eyepiece by another, beside a walk as well', async () => {
    const who = 'numbers';
    await ask('goto missed by 15 degrees east', who);
    // Power is the focal length over the eyepiece's, the exit pupil the eyepiece's over the focal ratio: by definition.
    expect((await ask('exit pupil 32mm ep in f/5', who)).summary).toMatch(/^6\.4 mm/u);
    expect((await ask('what power does a 25mm give on 1200mm focal length', who)).summary).toMatch(/^Power 48×/u);
    expect((await ask('and w a 10mm', who)).summary).toMatch(/^Power 120×/u);
    expect((await ask("what's the field of view with that", who)).summary).toMatch(/^Power 120×.*Field 0\.4°/u);
  });

  it('keeps the telescope that was told, and says so', async () => {
    const who = 'kit';
    await ask('what can i see tonight with my 130mm', who);
    const { notes } = await ask('is m51 any good', who);
    expect(notes.join(' ')).toContain('For the 130mm you told');
  });

  it('stays with tonight by day, and with the night and place that were asked about', async () => {
    const who = 'tonight';
    const byDay = Date.UTC(2026, 10, 27, 13, 13);
    await ask('is saturn up tonite', who, byDay);
    expect((await ask('how high', who, byDay)).title).toMatch(/^Saturn, night of/u);
    await ask("what's up in cape town on 31 dec", who, byDay);
    const { title, notes } = await ask('is the moon in the way', who, byDay);
    expect(title).toContain('31 Dec');
    expect(notes.join(' ')).toContain('Cape Town');
  });

  it('has no town deeper than the Dead Sea’s shore, 430 m below the sea (from memory)', () => {
    for (const name of ['Tromsø', 'Monaco', 'Suva, Fiji']) {
      const found = resolvePlace(deps.places(), name);
      expect(isProblem(found) ? found.problem : found.place.elevationM, name).toBeGreaterThanOrEqual(0);
    }
  });
});
