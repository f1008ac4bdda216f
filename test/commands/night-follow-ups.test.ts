/** What is asked next without a target of its own, beside a walk as well; what stands beside a target; a first line of place and telescope. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 19, 5);
const YORK = '53.96,-1.08';

const talk = async (site: string | null, lines: readonly string[]): Promise<string> => {
  const deps = await realDeps({ clubSiteText: site });
  let told = '';
  for (const [i, line] of lines.entries()) {
    told = await wordsOf(deps, line, EVENING + i * 20_000);
  }
  return told;
};

describe('a follow-up of the last target', () => {
  it.each([
    [['neptune?', 'how do i find it'], /^Neptune.*\nFrom Diphda/u],
    [['how high is saturn at 8pm', 'will i see the rings'], /^Saturn.*\nYes/u],
    [['where is jupiter at 11pm', 'what lens shud i use for it'], /^Jupiter.*\nJupiter in a 150 mm telescope: about/u],
    [['up M 31', 'wat eyepiece'], /^M 31.*\nM 31 in a 150 mm/u],
    [['up albireo', 'will my 70mm split it'], /Dawes' limit for a 70 mm telescope is 1\.7″/u],
    [['up castor', 'whats the gap between them'], /^Castor.*\nCastor: \d(?:\.\d)?″ apart/u],
    [['where is mars', 'is it near jupiter'], /^Mars and Jupiter.*\n.*4\.3° apart/u],
    [['Wie hoch steht Saturn um 21 Uhr?', 'und morgen?'], /Sat 28 Nov 2026, 21:00/u],
    [['Wie hoch steht Saturn um 21 Uhr?', 'und eine Stunde später?'], /Fri 27 Nov 2026, 22:00/u],
    [['up M 31', 'et demain ?'], /^M 31.*night of Sat 28 Nov/u],
    [['up M 31', 'e domani?'], /^M 31.*night of Sat 28 Nov/u],
    [['whats up tonight', 'which is the best of them'], /^Worth seeing.*\nThe best:/u],
    [['Jupiter, when?', 'that is too late. And next saturday?'], /^Jupiter, night of Sat/u],
    [['when are the geminids', 'will there be moon that night'], /Geminids: night of Sun 13 Dec.*no Moon then/u],
    [['can i see saturns rings with 10x50 binoculars', 'and with a 8 inch dobson'], /^Saturn, night of/u],
  ] as const)('%s', async (lines, told) => expect(await talk(YORK, lines)).toMatch(told));

  it.each([
    [['triage the mount does not connect', 'where is saturn at 20:00', 'and one hour later'], /21:00/u],
    [['triage the mount does not connect', 'whats up tonight', 'which is the best of them'], /^Worth seeing/u],
    [['triage the mount does not connect', 'up M 31', 'und morgen?'], /^M 31.*Sat 28 Nov/u],
    [['triage the mount does not connect', 'can i look at mercury at noon'], /^The Sun and Mercury/u],
    [['triage the mount does not connect', 'how I put my mount to the north'], /Level the tripod/u],
  ] as const)('is answered beside a walk, which waits: %s', async (lines, told) => {
    const answered = await talk(YORK, lines);
    expect(answered).toMatch(told);
    expect(answered).toMatch(/Your walk still waits/u);
  });

  it('"stop" where nothing is under way is told so kindly', async () =>
    expect(await talk(YORK, ['stop'])).toMatch(/Nothing of yours is under way/u));
});

describe('what stands beside a target', () => {
  // astropy 8.0: Aldebaran is 13.7° from M 45, and below it while both rise; Rigel 8.8° and Sirius 23° from the middle of the Belt.
  it.each([
    ["what's the name of the star below the Pleiades", /\nMost likely Aldebaran \(α Tau\), 13\.7° below/u],
    ['what star is the red one that comes after the Pleiades', /\nMost likely Aldebaran/u],
    ["what is the bright star under orion's belt", /\nMost likely (?:Rigel|Sirius)/u],
    ['bright near:Pleiades side:below', /\nMost likely Aldebaran/u],
  ])('%s', async (line, told) => expect(await talk('37.18,-3.6', [line])).toMatch(told));

  // astropy 8.0: 4.3° on the evening of 27 November 2026.
  it.each([
    'is Mars near to Jupiter?',
    'Is Mars in the sky with Jupiter together',
    'wie weit sind Mars und Jupiter auseinander',
  ])('%s', async (line) => expect(await talk('37.18,-3.6', [line])).toMatch(/^Mars and Jupiter.*\n.*4\.3° apart/u));

  it.each([
    ['whats that fuzzy patch near the w', /^C 14 \(Double Cluster\)/u],
    ['where is the w', /Cassiopeia/u],
    ['upside down question mark stars in the east', /Leo/u],
  ])('shapes: %s', async (line, told) => expect(await talk(YORK, [line])).toMatch(told));
});

describe('a first line of where one is and with what', () => {
  it.each([
    ['im dave from leeds, got a 130 mm tube', /Found as Leeds, England.*evening are for the 130 mm/su],
    ['Hallo, ich wohne in Freiburg und habe einen 8 Zoll Dobson', /Found as Freiburg.*evening are for the 8 inch/su],
    ['ciao, sono a Bologna con un newton 150', /Found as Bologna.*evening are for the 150 mm/su],
    ['Greetings from Perth, Australia! 12in dob here', /Found as Perth.*evening are for the 12 inch/su],
    ['La Serena, Chile. 10 inch SCT on a GEM.', /Found as La Serena.*evening are for the 10 inch/su],
    ['my name is Tom and I live in Austin Texas', /^Site saved: my site.*Found as Austin/su],
  ])('%s', async (line, told) => expect(await talk(null, [line])).toMatch(told));

  it('the telescope counts for what is asked next', async () =>
    expect(await talk(null, ['im dave from leeds, got a 130 mm tube', 'whats up tonight'])).toMatch(
      /130 mm telescope/u,
    ));
});
