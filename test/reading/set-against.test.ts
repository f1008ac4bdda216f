/** What another thing of a kind, another place or the want of a thing does, told in whatever words. All sentences invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const toldIn = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

/** The second half of each list was written with the first and not looked at while the reader was made. */
const TELLS: Readonly<Record<string, readonly string[]>> = {
  'other-computer.works': [
    'pc in the warm room connects no problem, my laptop on the same plug says access denied',
    "tried my dad's notebook and the kids one: both connect. only mine sits there",
    "On my sister's laptop everything runs like clockwork, on this one not a peep.",
    'mit notebook of my friend it works, with my own no reply',
  ],
  'other-computer.fails': [
    'borrowed the club laptop, same error',
    'i tried: other lead, a second pc. nothing',
    "my wife's laptop fails as well",
  ],
  'other-cable.works': ['With the lead of my colleague it works, with mine not.', 'club cable fine, mine dead'],
  'other-cable.same': ['swapped the usb lead. no difference', 'Tried a shorter one and another cable, still nothing'],
  'other-adapter.works': ['a mate lent me his adapter and with his it connects at once, mine is dead'],
  'other-program.works': [
    'the planetarium opens the port fine but the guiding software says it is busy',
    'old version of the app connects. new one crashes',
  ],
  'works-with-phone.works': [
    'phone finds it straight away. laptop: no device',
    'iPad connects fine, the pc gets no answer',
  ],
  'other-place.home': ['in the kitchen it works all evening, in the garden it drops', 'indoors fine, outside nothing'],
  'other-place.alone': ['Without the hub it is stable, with it I get drops'],
  'other-place.other-system': ['on linux it works, on windows on that very machine access denied'],
  'after-restart.same': ['rebooted the pc. same error', 'restarted the laptop twice, no change'],
  'other-supply.works': ['with a borrowed battery it behaves, with mine it resets'],
};

const SILENT: Readonly<Record<string, readonly string[]>> = {
  'other-computer.works': [
    'would another laptop work?',
    "my mate's laptop works fine with his mount",
    'I moved the plug to the other side of the laptop and it works',
    'my laptop works on windows 11',
  ],
  'other-computer.fails': ['I have no second laptop', 'the old laptop died, so this is a new one and it finds no port'],
  'other-cable.same': [
    'since I swapped the cable it is dead',
    'I have not got another cable',
    'somebody bumps the cord and it drops',
  ],
  'other-program.works': ['The other programme tonight is a talk on comets', 'it used to talk to the previous program'],
  'other-supply.same': ['there is no second battery here, it resets', 'without a second supply I cannot tell'],
  'after-restart.works': ['half way through a slew the whole thing restarted', 'the mount rebooted fine'],
  'firewall.blocked': ['vpn off, firewall off, ping ok, the app times out'],
};

describe('another than the one in hand', () => {
  for (const [fact, lines] of Object.entries(TELLS))
    it.each(lines)(`${fact}: %s`, (line) => {
      expect(toldIn(line)).toContain(fact);
    });

  for (const [fact, lines] of Object.entries(SILENT))
    it.each(lines)(`no ${fact}: %s`, (line) => {
      expect(toldIn(line)).not.toContain(fact);
    });
});
