/** How it went with which of several things, told in halves and in lists. Invented; no source. */
import { describe, expect, it } from 'vitest';
import { amiss, everyWay, spread } from './make.js';

const WELL = ['works', 'connects at once', 'is fine', 'gives no trouble', 'never drops', 'is perfect'];
const BADLY = ['does not', 'fails', 'gets nothing', 'will not connect', 'times out', 'says access denied'];
const VAIN = ['no change', 'same again', 'nothing helped', 'no luck', 'still Error 31', 'to no avail'];

/** Another of its kind, and the member's own. */
interface Kind {
  readonly other: readonly string[];
  readonly own: readonly string[];
  readonly well: string;
  readonly badly?: string;
}

const KINDS: Readonly<Record<string, Kind>> = {
  computer: {
    other: ['the other laptop', "my wife's computer", 'a second pc', 'the club laptop'],
    own: ['my laptop', 'the notebook'],
    well: 'other-computer.works',
    badly: 'other-computer.fails',
  },
  cable: {
    other: ['another cable', 'the borrowed lead', 'a different cord'],
    own: ['my own cable', 'this lead'],
    well: 'other-cable.works',
    badly: 'other-cable.same',
  },
  adapter: {
    other: ['another adapter', 'a different converter'],
    own: ['my adapter', 'this one'],
    well: 'other-adapter.works',
    badly: 'other-adapter.same',
  },
  phone: { other: ['my phone', 'the tablet'], own: ['the laptop', 'my pc'], well: 'works-with-phone.works' },
  program: {
    other: ['the other program', 'a different app'],
    own: ['mine', 'my usual one'],
    well: 'other-program.works',
    badly: 'other-program.fails',
  },
};

const halves = [
  '{other} {well}, {own} {badly}',
  '{own} {badly}, {other} {well}',
  '{other} {well} but {own} {badly}',
  '{own} {badly}. {other} {well}.',
];

describe('of two halves each is read of its own subject', () => {
  it.each(Object.entries(KINDS))('%s', (_, { other, own, well, badly }) => {
    const texts = spread(everyWay(halves, { other, own, well: WELL, badly: BADLY }), 240);
    expect(amiss(texts, { read: [well], not: badly === undefined ? [] : [badly] })).toEqual([]);
  });
  it('with it said before', () => {
    for (const { other, well } of Object.values(KINDS)) {
      const texts = everyWay(['it works with {other} but not with mine', 'with {other} it {well}, with mine never'], {
        other,
        well: ['works', 'connects'],
      });
      expect(amiss(texts, { read: [well] })).toEqual([]);
    }
  });
});

describe('a trial that failed', () => {
  it.each(Object.entries(KINDS).filter(([, { badly }]) => badly !== undefined))('%s', (_, { other, well, badly }) => {
    const texts = everyWay(['tried {other}, {vain}', 'tried {other}: {vain}', 'Tried {other}. {vain}.'], {
      other,
      vain: VAIN,
    });
    expect(amiss(texts, { read: [badly ?? ''], not: [well] })).toEqual([]);
  });
});

const TRIALS: readonly (readonly [string, string])[] = [
  ['another cable', 'tried-already.cable'],
  ['a different adapter', 'tried-already.adapter'],
  ['a second laptop', 'tried-already.computer'],
  ['all the usb sockets', 'tried-already.socket'],
  ['another power supply', 'tried-already.supply'],
  ['every baud rate', 'tried-already.settings'],
];

describe('a list of trials', () => {
  const three = TRIALS.flatMap((a, i) => TRIALS.flatMap((b, j) => (i === j ? [] : [[a, b] as const])));
  it('in vain tells each of them', () => {
    for (const [[a, told], [b, second]] of three) {
      const texts = everyWay(
        ['tried {a}, {b}. {vain}', 'tried {a} and {b}, {vain}', 'tried: {a}, {b}: {vain}', '{a}, {b}: {vain}'],
        { a: [a], b: [b], vain: VAIN },
      );
      expect(amiss(texts, { read: [told, second] })).toEqual([]);
    }
  });
  it('of which the last cured tells none as tried in vain', () => {
    for (const [[a], [b, second]] of three.filter(([, [b]]) => !b.includes('baud'))) {
      const texts = everyWay(['tried {a}, {b}, and that last one did it', 'swapped to {b}: works now'], {
        a: [a],
        b: [b],
      });
      expect(amiss(texts, { not: [second] })).toEqual([]);
    }
  });
  it('that is only meant or asked tells nothing', () => {
    for (const [[a], [b]] of three) {
      const texts = everyWay(
        ['should I try {a}, {b}?', 'next week I want to try {a} and {b}', 'would {a} or {b} help?'],
        { a: [a], b: [b] },
      );
      expect(amiss(texts, { not: ['tried-already', 'other-cable', 'other-adapter', 'other-computer'] })).toEqual([]);
    }
  });
});

describe('one axis of two', () => {
  it('is told by the half that does not move', () => {
    const texts = [
      ...everyWay(['ra {well}, dec {badly}', 'dec {badly}. ra {well}.', 'ra {well} but dec {badly}'], {
        well: ['works', 'moves', 'is fine', 'is ok'],
        badly: ['does not move', 'is dead', 'does nothing', 'does not'],
      }),
      ...everyWay(['up and down {well}, left and right {badly}'], {
        well: ['moves', 'is fine'],
        badly: ['does not', 'is dead'],
      }),
    ];
    expect(amiss(texts, { read: ['arrow-keys.one|mount-does.one-axis'], not: ['arrow-keys.none'] })).toEqual([]);
  });
});
