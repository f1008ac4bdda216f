/** Cures told by the way or at length, and sentences of the same words that tell none. Ours, in members' voices; no source. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { loadTriage } from '../../bot/triage/index.js';
import { remedyOutcome } from './outcome-named.js';

const { reading } = loadTriage(path.join(projectRoot(), 'knowledge/connection'));

const CURED = [
  'dude it works',
  'all good here thx',
  'the fault is repaired with the new fuse in it',
  'it does not drop any more since I tied the lead up, thank you ever so much',
  'put the thick wire in, went over the whole sky twice with no dropouts',
  'I have set it to 85 and now Vega is taken without a complaint',
  'connected first go',
  'ticked the box, and she moves!',
  'yep that is got it',
  'no more time outs since i swapped the plug',
  'has not dropped in half an hour',
  'it holds now, bless you',
  'it was off, flicked it on n now im in, goto worked n everything',
];
const NOT_CURED = [
  'the handset works fine',
  'it moves when i press the arrows',
  'the plugs are all good',
  'the battery is fixed to the tripod',
  'i have fixed the lead to the leg',
  'it goes to sleep now',
  'it works on my phone',
  'that is a fixed address',
  'is it fixed now',
  'my friend fixed his',
  'it worked for a bit',
  'now it goes the other way',
  'no more ideas',
  'all good questions',
  'its all gone quiet',
  'the mount is fixed on a pier',
  'it goes dark now',
  'thanks i will try that',
  'still no luck, thanks',
];

describe('what came of a remedy, told by the way', () => {
  it.each(CURED)('“%s” is a cure', (text) => {
    expect(remedyOutcome(reading, text)).toBe('works');
  });
  it.each(NOT_CURED)('“%s” is none', (text) => {
    expect(remedyOutcome(reading, text)).not.toBe('works');
  });
});
