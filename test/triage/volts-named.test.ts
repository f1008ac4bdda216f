/** Two readings of a meter, at rest and under load. What a 12 V supply may fall by: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { withVoltsCompared } from '../../bot/triage/walk/volts-named.js';
import { deps } from './console-walk.js';

const { reading } = deps.triage();
const factsOf = (text: string): readonly string[] =>
  withVoltsCompared(readText(reading, text), text).facts.map(({ what, answer }) => `${what}=${answer}`);

describe('volts at rest and while the motors run', () => {
  it.each([
    'meter at the mount says 12.3 rest, 10.9 when slew',
    '12.6 standing still, falls to 11 as soon as both motors run',
    'at standstill 12.9, with the slew on it sinks to 11.3',
    'battery says 12.7 but only 10.2 reach the mount on a goto',
    'goes down from 12,4 to 10,6 when it slews',
    'measured 12.5 v idle and 10.7 v on a goto',
  ])('%s: the supply gives way, whatever it reads at rest', (text) => {
    expect(factsOf(text)).toContain('power-light=dips');
    expect(factsOf(text)).not.toContain('battery-volts=full');
    expect(factsOf(text)).not.toContain('when-drops=motors');
  });

  it.each(['it reads 12.7 and stays at 12.6 while slewing', '13.6 volts standing, 13.4 while moving'])(
    '%s: it holds',
    (text) => {
      expect(factsOf(text)).toContain('battery-volts=full');
      expect(factsOf(text)).not.toContain('power-light=dips');
    },
  );

  it.each([
    '12.4 at the batt but 10.4 at the mount',
    '12.6 on the posts, 11.2 at the plug',
    'battery 12.5, mount end only 10.9',
  ])('%s: the lead between loses it, and the battery is not to blame', (text) => {
    expect(factsOf(text)).toContain('power-lead=thin');
    expect(factsOf(text)).not.toContain('battery-volts=low');
  });

  it.each([
    ['with the meter on during a slew it drops to 9.8', 'power-light=dips'],
    ['10.4 v when both motors run', 'power-light=dips'],
    ['the battery falls to 9.8 when it slews', 'battery-volts=low'],
  ])('%s: too little, whatever it reads at rest', (text, fact) => {
    expect(factsOf(text)).toContain(fact);
  });

  it.each([
    'it drops after 10 to 12 minutes of slewing',
    'a 12 V 5 A supply, and it drops when slewing',
    'it falls from 12 degrees to 10 when it slews',
    'slews at 9 and 12, resting in between',
  ])('%s: no readings of a meter', (text) => {
    expect(factsOf(text).filter((fact) => /^(?:power-light|battery-volts)/u.test(fact))).toEqual([]);
  });

  it.each([
    'its 12.4 at the battery but only 10.4 by the time it gets to the mount',
    'mount sees 10.9, battery 12.7',
    '10.4 at the mount end, 12.4 on the battery posts',
    '12.5V leaves the psu, 11.2V arrives at the plug',
  ])('%s: the lead or its plugs lose the rest, the battery is not low', (text) => {
    expect(factsOf(text)).toContain('power-lead=thin');
    expect(factsOf(text)).not.toContain('battery-volts=low');
  });

  it.each(['still 12.4 at the battery', '12.4 v across the battery', '12.4 at the battery, 12.2 at the mount'])(
    '%s: nothing is lost, and it is not low (12.2 V is half full for lead-acid; value from memory)',
    (text) => {
      expect(factsOf(text)).toContain('battery-volts=full');
      expect(factsOf(text)).not.toContain('power-lead=thin');
    },
  );
});
