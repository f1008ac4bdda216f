/** What is planned, said of a whole kind, or called good is no fact of this mount. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const toldBy = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('what is meant to be done', () => {
  it.each([
    ["I'll ping the mount after supper", 'ping.answers'],
    ["I'm going to buy a powered hub", 'hub.straight'],
    ["We'll join the mount's own wifi on Friday", 'joined-network.mounts'],
  ])('“%s” does not tell %s', (text, told) => {
    expect(toldBy(text)).not.toContain(told);
  });

  it('a time-out that will come again is told', () => {
    expect(toldBy('I can ping the mount')).toContain('ping.answers');
    expect(toldBy("every time I connect I'll get a timeout")).toContain('message.no-reply');
  });
});

describe('what is said of a whole kind', () => {
  it.each([
    ['hubs without their supply cause trouble', 'hub.bus-hub'],
    ['parked mounts ignore gotos', 'park-state.parked'],
    ['a weak signal often makes drops', 'signal.weak'],
  ])('“%s” does not tell %s', (text, told) => {
    expect(toldBy(text)).not.toContain(told);
  });

  it.each([
    ['my hub has no supply', 'hub.bus-hub'],
    ['usually there is a weak signal', 'signal.weak'],
    ['the mount is parked', 'park-state.parked'],
  ])('“%s” tells %s', (text, told) => {
    expect(toldBy(text)).toContain(told);
  });
});

describe('what is named and called good', () => {
  it.each(['daylight saving agrees', 'summer time: correct.', 'offset is ok and so is summer time'])(
    '“%s” does not put summer time in question',
    (text) => {
      expect(toldBy(text)).not.toContain('zone-entries.summer-time');
    },
  );
});
