/** Cures told by what the mount now does rightly, and near sentences that tell none. Ours, in members' voices; no source. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { outcomeSaid } from '../../bot/reading/index.js';
import { loadTriage } from '../../bot/triage/index.js';
import { remedyOutcome } from './outcome-named.js';

const { reading } = loadTriage(path.join(projectRoot(), 'knowledge/connection'));

const CURED = [
  'now the telescope goes to the star exactly. Many thanks',
  'changed to no, now it goes to the star exactly',
  'set it to no, now it goes to jupiter spot on. cheers',
  'put in the right hemisphere, goto lands dead centre now',
  'now it centres the star nicely',
  'firmware new, now mount answer me. danke',
  'the scope now stops right on the star',
  'powered hub fitted and it stays on now',
  'all night connected, not one drop',
  'moved the dongle away, link stays up all evening',
  'yes now each star falls in the middle',
  'parity off, it drives to the right place now',
  'it arrives exactly on target now, thank you',
  'now the star stays in the middle, thank you so much',
];
/** Of one axis, or with too little said. */
const ASKED = [
  'tight it now. dec move ok',
  'balance done, now ra moves smooth',
  'other port chosen. mount replies straight off',
  'was not level, now it goes to the star exactly',
];
const NOT_CURED = [
  'it goes to the star but then drifts',
  'now it goes to the star and then wanders off',
  'dec moves ok, ra not',
  'now the telescope goes to the wrong star exactly',
  'changed to no, now it goes to the other side',
  'now it stays connected for ten minutes',
  'now it stays online until the laptop sleeps',
  'now it goes almost to the star',
  'now it goes below the horizon',
  'now it goes into the fence',
  'now it goes east instead of west',
  'now it moves exactly one degree beside the star',
  'now all stars are at the edge of the eyepiece',
  'i hope now it goes to the star exactly',
  'will it now go to the star exactly',
];

describe('what the mount now does rightly', () => {
  it.each(CURED)('“%s” is a cure', (text) => expect(remedyOutcome(reading, text)).toBe('works'));
  it.each(ASKED)('“%s” is asked about', (text) => {
    expect(remedyOutcome(reading, text)).toBeNull();
    expect(outcomeSaid(reading, text).what).toBe('cured');
  });
  it.each(NOT_CURED)('“%s” is none', (text) => {
    expect(remedyOutcome(reading, text)).not.toBe('works');
    expect(outcomeSaid(reading, text).what).not.toBe('cured');
  });
});
