/** What is asked of the last target across a garden, in other words and a foreigner's English; a telescope told after a list. Ways of saying from memory. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 12, 20, 30);

const talk = async (...lines: readonly string[]): Promise<string> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  let told = '';
  for (const [i, line] of lines.entries()) told = await wordsOf(deps, line, EVENING + i * 20_000);
  return told;
};

describe('of the last target, however it is said', () => {
  it.each([
    // Where, and how high at an hour.
    ['where exactly is it', /^Saturn\nUp, 34° high/u],
    ['whereabouts is it', /^Saturn\nUp, 34° high/u],
    ['whereabouts', /^Saturn\nUp, 34° high/u],
    ['where abouts in the sky is it', /^Saturn\nUp, 34° high/u],
    ['where is it at 11pm', /^Saturn\nUp, .*23:00 GMT/u],
    ['how high at 10', /^Saturn\nUp, .*22:00 GMT/u],
    ['how high is it at 10pm', /^Saturn\nUp, .*22:00 GMT/u],
    ['how low at midnight', /^Saturn\nUp, .*00:00 GMT/u],
    ['how high tomorrow at 9', /^Saturn\n.*Sun 13 Dec 2026, 21:00 GMT/u],
    ['how bout at 3am', /No, it set at|03:00/u],
    ['and how is tomorrow', /^Saturn, night of Sun 13 Dec/u],
    ['hows tomorrow', /^Saturn, night of Sun 13 Dec/u],
    ['how is it on friday', /^Saturn, night of Fri 18 Dec/u],
    // How long, and until when.
    ['how many hours he is visible', /^Saturn.*\nYes, until 00:09/u],
    ['how long is it visible', /^Saturn.*\nYes, until 00:09/u],
    ['how long is it up for', /^Saturn.*\nYes, until 00:09/u],
    ['for how long can i see it', /^Saturn.*\nYes, until 00:09/u],
    ['how long have i got', /^Saturn.*\nYes, until 00:09/u],
    ['from when till when', /^Saturn.*\nYes, until 00:09/u],
    ['between what times', /^Saturn.*\nYes, until 00:09/u],
    ['until when', /^Saturn.*\nYes, until 00:09/u],
    ['till when can we see it', /^Saturn.*\nYes, until 00:09/u],
    ['how late would we have to stay up', /^Saturn.*\nNo, it is high enough until 00:09/u],
    ['do we have to stay up', /^Saturn.*\nNo, it is high enough until 00:09/u],
    ['when will it be gone', /^Saturn.*\nSaturn sets at 01:23/u],
    ['when does it disappear', /^Saturn.*\nSaturn sets at 01:23/u],
    ['how long till its gone', /^Saturn.*\nSaturn sets at 01:23/u],
    ['when do we lose it', /^Saturn.*\nSaturn sets at 01:23/u],
    // When highest.
    ['is it higher later', /^Saturn.*\nSaturn crosse[sd] the meridian/u],
    ['does it get any higher', /^Saturn.*\nSaturn crosse[sd] the meridian/u],
    ['which hour is most high', /^Saturn.*\nSaturn crosse[sd] the meridian/u],
    ['when is it highest', /^Saturn.*\nSaturn crosse[sd] the meridian/u],
    // With what.
    ['do i need scope for it', /^Saturn.*\nNo: Saturn is plain to the naked eye/u],
    ['do you need a telescope', /^Saturn.*\nNo: Saturn is plain to the naked eye/u],
    ['would i need binoculars', /^Saturn.*\nNo: Saturn is plain to the naked eye/u],
    ['is it a naked eye object', /^Saturn.*\nYes, with the naked eye/u],
    ['without a telescope', /^Saturn.*\nYes, with the naked eye/u],
    ['can i see it in binos', /^Saturn.*\nYes, with binoculars/u],
    ['hows it look in 10x50', /^Saturn.*\nYes, with binoculars/u],
    ['what does it look like in binoculars', /^Saturn.*\nYes, with binoculars/u],
    ['whats it like through a 130mm', /^Saturn.*\nYes, until.*\n(?:.*\n)*Shows: rings/u],
    ['please is possible with 130mm telescope', /^Saturn.*\nYes, until/u],
    ['all i have is 10x50 binos', /^Saturn.*\nYes, with binoculars/u],
    // Itself.
    ['and its rings', /^Saturn.*\nYes, until/u],
    ['what about its rings', /^Saturn.*\nYes, until/u],
    ['he have rings?', /^Saturn.*\nYes, until/u],
    ['does it have rings', /^Saturn.*\nYes, until/u],
    ['what is magnitude of her', /^Saturn.*\nSaturn: mag 0\.\d/u],
    ['how big will it look', /^Saturn.*\nSaturn is 1[78]\.\d″ across/u],
    ['whats it near', /^Bright near Saturn/u],
    ['what is it next to', /^Bright near Saturn/u],
    ['how far from the sun', /^The Sun and Saturn\nSaturn is \d+\.\d° from the Sun/u],
    ['how close to the meridian is it', /^Saturn.*\nHour angle/u],
  ] as const)('%s', async (line, told) => expect(await talk('up saturn', line)).toMatch(told));

  it('"now" is now, whatever hour was asked of before', async () =>
    expect(await talk('up saturn', 'how high at 11pm', 'how high is it now')).toMatch(/20:3\d GMT/u));

  it.each([
    [['when is opposition of jupiter', 'how big will it look'], /^What is coming.*\nNext: Jupiter, opposition/u],
    [['when is opposition of jupiter', 'where is it'], /^Jupiter\n/u],
    [['when are the geminids', 'how many will i see'], /^What is coming: showers/u],
    [['when are the geminids', 'how many can i expect'], /^What is coming: showers/u],
    [['when is the next solar eclipse', 'can i see it from here'], /^What is coming: eclipses/u],
    // Quarters of the Moon: 17 December 05:43 and 24 December 2026 01:28 UT (PyEphem 4.2.1).
    [['is the moon up', 'when is it half'], /^The Moon.*\nHalf, first quarter, Thu 17 Dec/u],
    [['is the moon up', 'what can i see on it with my telescope'], /^The Moon’s terminator/u],
    [['where is saturn', 'what can i see on it'], /^Saturn, night of.*\n(?:.*\n)*Shows: rings/u],
    [['where is saturn', 'what can i see on it with binoculars'], /^Saturn.*\nYes, with binoculars/u],
    [['is the moon up', 'when is it full'], /^The Moon.*\nFull Moon Thu 24 Dec/u],
    [['when is the next half moon'], /^The Moon.*\nHalf, first quarter, Thu 17 Dec/u],
    [['is the moon up', 'first quarter when'], /^The Moon.*\nFirst quarter Thu 17 Dec/u],
    [['whats it near', 'up m31', 'whats it near', 'do i need scope for it'], /^M 31.*\nNo: M 31 is plain/u],
  ] as const)('after an event, or what stands beside: %s', async (lines, told) =>
    expect(await talk(...lines)).toMatch(told),
  );
});

describe('after a list', () => {
  it.each([
    ['anything at 1am', /^Worth seeing.*\nThe best: .*01:00/u],
    ['ive only got binoculars 10x50', /^Worth seeing.*\n(?:.*\n)*.*binoculars/u],
    ['i only have 10x50 binoculars', /^Worth seeing.*\n(?:.*\n)*.*binoculars/u],
  ] as const)('%s narrows it', async (line, told) => expect(await talk('any galaxies tonight', line)).toMatch(told));

  // PyEphem 4.2.1, horizon −34′, 54.97° N, 2.10° W: Neptune sets 00:50, Saturn 01:23; Jupiter rises 21:17 UTC.
  it.each([
    ['n when do they set', /\nThey set: .*Saturn 01:2[234]/u],
    ['which one sets first', /\nThey set: Neptune/u],
    ['when do they rise', /\nThey rise: Jupiter 21:1[678].*Saturn, Uranus and Neptune are up already/u],
    ['whats the brightest one', /\nBrightest: Jupiter, mag −2\.\d; then Mars/u],
    ['which is the best', /\nThe best: /u],
    ['where are they', /\nThe best: /u],
    ['how high are they', /\nThe best: /u],
    ['are any of them naked eye', /\nThe best: Saturn, Jupiter and Mars\. 3 targets/u],
  ] as const)('of all of it: %s', async (line, told) => expect(await talk('any planets', line)).toMatch(told));

  it('what was asked of all of it is not said again of another night', async () =>
    expect(await talk('any planets', 'when do they set', 'which is the best')).not.toMatch(/They set/u));

  it('what was told to be all one has is what the next is asked for', async () =>
    expect(await talk('whats up tonight', 'ive only got binoculars 10x50', 'what about m31')).toMatch(
      /plain to see in binoculars/u,
    ));
});

describe('whether a telescope is needed', () => {
  // Visual magnitudes: M 57 8.8, M 33 5.7, M 95 9.7 (Messier lists, from memory); the limits are common practice, no source.
  it.each([
    ['do i need a telescope for saturn', /No: Saturn is plain to the naked eye/u],
    ['do i need a telescope to see m57', /Binoculars do in a dark sky/u],
    ['do you need a telescope for m95', /Yes: mag 9\.\d is for a telescope/u],
    ['do i need a telescope for the moon', /No: the Moon is plain to bare eyes/u],
    ['do i need a telescope for albireo', /Any telescope will do/u],
  ] as const)('%s', async (line, told) => expect(await talk(line)).toMatch(told));
});

describe('with bare eyes', () => {
  it.each(['i not have telescope only eyes, what is best', 'what is best with just eyes'])('%s', async (line) =>
    expect(await talk(line)).toMatch(/^Worth seeing.*\n(?:.*\n)*.*naked eye/u),
  );
  it('which telescope to buy is another question', async () =>
    expect(await talk('i dont have a telescope, which is best to buy')).toMatch(/carry outside often/u));
});

describe('beside a target, what is of the mount or of people stays theirs', () => {
  it.each([
    'how long is the usb cable',
    'how long will the download take',
    'do i need a driver for it',
    'i have no signal',
    'i only have one cable',
    'where exactly do i plug it in',
    'did she have it',
    'how late are you all staying',
  ])('%s', async (line) => expect(await talk('up saturn', line)).not.toMatch(/Saturn/u));
});

describe('of the Sun nothing is said to show in any glass, nor to the bare eye', () => {
  it.each([
    'do i need a telescope for it',
    'hows it look in 10x50',
    'without a telescope',
    'is it naked eye',
    'what can i see on it with my binoculars',
    'all i have is 10x50 binos',
  ])('%s', async (line) => {
    for (const before of ['where is the sun', 'when is the next solar eclipse'])
      expect(await talk(before, line)).not.toMatch(/^Sun\b|^What is coming|\nYes|plain to the naked eye/u);
  });
});
