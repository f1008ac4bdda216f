/** Lists of a few words an item, as members type them on a phone; what a longer clause says of the same things is no item. Our own. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const toldIn = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('what is ticked off in a list', () => {
  it.each([
    ['power light on, fuse fine, other laptop same', ['power-light.steady', 'fuse.whole', 'other-computer.fails']],
    [
      'fuse ok / switch on / led lit / handset dark',
      ['fuse.whole', 'power-switch.all-on', 'power-light.steady', 'controller-screen.dark'],
    ],
    [
      'clutches tight, balance fine, tracking on, it stays',
      ['clutches.firm', 'balance.balanced', 'tracking-rate.sidereal'],
    ],
    [
      'other cable: same. other port: same. other pc: works',
      ['other-cable.same', 'other-usb-socket.same', 'other-computer.works'],
    ],
    ['vpn off, firewall off, ping good, app times out', ['vpn.none', 'firewall.allowed', 'ping.answers']],
  ])('%s', (text, facts) => {
    expect(toldIn(text)).toEqual(expect.arrayContaining(facts));
  });

  it.each([
    ['before I switch on, the fuse box hums', 'power-switch.all-on'],
    ['date ok, time wrong, site ok', 'date-entries.right'],
    ['clutches not tight, balance fine', 'clutches.firm'],
    ['new cable, and since then it will not connect', 'other-cable.same'],
    ['is the balance ok, clutches too?', 'balance.balanced'],
  ])('is none in “%s”', (text, fact) => {
    expect(toldIn(text)).not.toContain(fact);
  });
});
