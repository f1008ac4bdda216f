/**
 * Worded answers to the question in hand. The sentences are ours, in the voices of members at night (invented; no source): which answer a
 * helper who reads the screen would tick, or none where a helper would ask again.
 */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { answerMeant, asksBack } from '../../bot/reading/index.js';
import { loadTriage } from '../../bot/triage/index.js';
import { remedyOutcome } from './outcome-named.js';

const model = loadTriage(path.join(projectRoot(), 'knowledge/connection'));
const answerTo = (check: string, text: string): string | null => {
  const meant = answerMeant(model.reading, text, {
    id: check,
    answers: model.check(check)?.answers ?? [],
    good: model.check(check)?.good,
  });
  return meant?.isSure === true ? meant.id : null;
};

const SAID: readonly (readonly [string, string, string | null])[] = [
  ['entries-screen', 'the time. 2 hrs early, but only after i connect', 'time'],
  ['entries-screen', 'longitude is wrong', 'longitude'],
  ['entries-screen', 'all match', 'all-match'],
  ['entries-screen', 'none, they all match', 'all-match'],
  ['entries-screen', 'its the utc offset', 'offset'],
  ['entries-screen', 'summertime thing is on, shouldnt be', 'summer-time'],
  ['entries-screen', 'the summer time setting is on', 'summer-time'],
  ['other-place', 'no it fails everywhere', 'nowhere'],
  ['other-place', 'it works at home', 'home'],
  ['network-doubts', 'none, both are on the same wifi', 'none'],
  ['network-doubts', 'none of these', 'none'],
  ['network-doubts', 'i do have a vpn on', 'vpn'],
  ['network-doubts', 'the bridge is quite far away', 'far'],
  ['firewall', 'it says the firewall is run by my security suite', 'suite'],
  ['firewall', 'no firewall here', 'allowed'],
  ['changed-last', 'got a new cable, third one', 'cable'],
  ['changed-last', 'new router', 'network'],
  ['changed-last', 'i added a camera', 'device'],
  ['changed-last', 'changed the battery', 'supply'],
  ['changed-last', 'windows did an update', 'update'],
  ['changed-last', 'we got a new internet router last week', 'network'],
  ['device-status', 'it says its working properly. usb serial port (COM8)', 'working'],
  ['device-status', 'code 28', 'no-driver'],
  ['device-status', 'code 10 i think', 'cannot-start'],
  ['serial-lead', 'bought it apart online, it fits fine', 'other-family'],
  ['serial-lead', 'the one made for it', 'its-own'],
  ['router-list', 'its listed under guests', 'guests'],
  ['router-list', 'not in the list', 'missing'],
  ['router-list', 'listed but with another address', 'new-address'],
  ['ping', 'yes it answers', 'answers'],
  ['ping', 'time out, no answer', 'silent'],
  ['works-with-handset', 'yes finds everything', 'finds'],
  ['works-with-handset', "no it doesn't move", 'fails'],
  ['works-with-handset', 'havent got a handset', 'none'],
  ['adapter-light', 'stays dark', 'still'],
  ['adapter-light', 'it sends but nothing comes back', 'sends'],
  ['port-appears', 'nothing at all', 'nothing'],
  ['port-appears', 'a new port shows up and stays', 'port'],
  ['port-appears', 'comes and goes', 'flaps'],
  ['hub', 'yes straight in', 'straight'],
  ['hub', 'no its in a dock', 'bus-hub'],
  ['power-light', 'dark', 'off'],
  ['power-light', 'lit and steady', 'steady'],
  ['power-light', 'it blinks', 'dips'],
  ['power-light', 'not lit', 'off'],
  ['home-start', 'yes', 'at-home'],
  ['home-start', 'no i moved the tube by hand', 'elsewhere'],
  ['star-sure', 'quite sure', 'sure'],
  ['guest-network', 'one is on the guest network', 'guest'],
  ['guest-network', 'both on the main one', 'main'],
  ['earlier-lead', 'yes my first cable had a nine pin plug', 'yes'],
  ['earlier-lead', 'no never', 'no'],
  ['settings-screen', 'the speed', 'speed'],
  ['settings-screen', 'none, all fit', 'all-fit'],
  ['settings-screen', 'everything fits', 'all-fit'],
  ['board-version', 'older', 'older'],
  ['when-drops', 'after a few minutes', 'minutes'],
  ['when-drops', 'when the motors run', 'motors'],
  ['when-drops', 'when i touch the cable', 'touched'],
  ['when-drops', 'only when its cold and damp', 'weather'],
  ['controller-screen', 'its blank', 'dark'],
  ['controller-screen', 'asleep', 'asleep'],
  ['miss-shape', 'only low in the sky', 'low'],
  ['miss-shape', 'only the moon and planets', 'solar-system'],
  ['vpn', 'nope', 'none'],
  ['vpn', 'yeah the work one', 'active'],
  ['lead-level', 'its marked 5v', 'logic'],
  ['lead-level', 'no marking', 'unmarked'],
  ['lead-level', 'rs232 it says', 'rs232'],
  // What is found good is not what is wrong.
  ['entries-screen', 'time is right i looked', null],
  ['entries-screen', 'utc offset is fine i think', null],
  ['settings-screen', 'the speed is correct', null],
  ['network-doubts', 'the firewall is ok', null],
  // "Nothing" denies what follows it.
  ['controller-screen', 'nothing else is connected', null],
  ['controller-screen', 'nothing', 'dark'],
  ['network-doubts', 'nothing else is connected', null],
  // Not an answer: a question back, a story, other words.
  ['settings-screen', 'what speed? where do i see that?', null],
  ['port-settings', 'what is parity', null],
  ['ping', 'how do i ping', null],
  ['controller-screen', 'what has that to do with my wifi', null],
  ['changed-last', 'the weather is lovely and my friend brought cake', null],
  ['other-place', 'constructor', null],
];

describe('an answer in words', () => {
  it.each(SAID)('%s: “%s” is %s', (check, text, expected) => {
    expect(model.check(check), check).toBeDefined();
    expect(answerTo(check, text)).toBe(expected);
  });
});

/** What members say beside the question, and what it does speak of. */
const BESIDE: readonly (readonly [string, readonly string[]])[] = [
  [
    'told you already, the tablet does it and the pc will not',
    ['works-with-phone', 'other-computer', 'how-far', 'other-place'],
  ],
  [
    'the yellow mark is there even with nothing in the remote',
    ['port-appears', 'device-status', 'driver-list', 'how-far'],
  ],
  ['my wife set this up in spring and i have not opened it since', ['worked-before', 'changed-last', 'other-place']],
  ['as soon as the heater bands come on it falls out', ['when-drops', 'how-far', 'changed-last', 'other-place']],
  ['we live two streets from the old water tower, if that matters', []],
  [
    'the lead goes into the bottom of the remote, small flat plug',
    ['socket-used', 'serial-lead', 'controller-lead', 'usb-plugs'],
  ],
  ['sorry my gloves are thick, i type slowly', []],
  ['it stops about a hand short of the star every time', ['how-far', 'mount-does', 'miss', 'miss-shape']],
];

describe('what is said beside the question', () => {
  it('is taken for an answer once in fifty times at most', () => {
    const taken = BESIDE.flatMap(([text, speaksOf]) =>
      model.checks
        .filter(({ id }) => !speaksOf.includes(id) && answerTo(id, text) !== null)
        .map(({ id }) => `${id}: ${text}`),
    );
    const asked = BESIDE.reduce((sum, [, speaksOf]) => sum + model.checks.length - speaksOf.length, 0);
    expect(taken.length / asked, taken.join('\n')).toBeLessThanOrEqual(0.02);
  });
});

const TRIED: readonly (readonly [string, ReturnType<typeof remedyOutcome>])[] = [
  ['no change', 'same'],
  ['i closed the firmware loader already. no change', 'same'],
  ['i did type the one off the router list. no change', 'same'],
  ['light is solid, it has joined. no change', 'same'],
  ['this ones marked 5V already! no change', 'same'],
  ['set 115200 / restarted windows, same thing', 'same'],
  ['its in the right socket, same thing', 'same'],
  ['cant be, same cable works on my mates mount', 'same'],
  ['limit is 0 already, still refused', 'same'],
  ["didn't help", 'same'],
  ['nothing changed', 'same'],
  ['still times out', 'same'],
  ['nope still the same', 'same'],
  ['sync now fails, no internet out here', 'could-not'],
  ["i can't find that setting", 'could-not'],
  ['roll back is grey', 'could-not'],
  ['rollback greyed', 'could-not'],
  ["the roll back button can't be clicked", 'could-not'],
  ['there is no roll back button', 'could-not'],
  ['the button is disabled', 'could-not'],
  ["don't have a spare", 'could-not'],
  ['not allowed to on this laptop', 'could-not'],
  ['The installer stops with 0x80070643', 'could-not'],
  ['ok it connects now with 192.168.0.37! but search still finds nothing', 'changed'],
  ['goes now but lands 15 degrees too far west', 'changed'],
  ['different error now', 'changed'],
  ['it works!', 'works'],
  ['works now, thanks', 'works'],
  ['yes that did it', 'works'],
  ['fixed', 'works'],
  ['connected!', 'works'],
  ['it connects now', 'works'],
  ['yes its working now', 'works'],
  ['oh theres a sky meter logger by the clock, i closed it and now it connects', 'works'],
  ['ah now it moves', 'works'],
  ['and its connected now', 'works'],
  ['now it connects but drops after a minute', 'changed'],
  ['turned that off and now it stays', 'works'],
  ['my phone was still on it… off now and it opens', 'works'],
  ['ok that was it, works', 'works'],
  ['put it an hour back, lands spot on now', 'works'],
  ['program connects', 'works'],
  ['swapped it, tried six times fine', 'works'],
  ['both axes at full speed now', 'works'],
  ['spot on now but it drops after a while', 'changed'],
  ['the program connects to nothing', null],
  ['noise is gone but it still drops', 'changed'],
  ['i installed it, now com3 is there but no response', 'changed'],
  ['nothing else running', 'same'],
  ['its not that', 'same'],
  ['there is nothing to close', 'same'],
  ['that was all fine', 'same'],
  ['after a reboot its wrong again', 'same'],
  ['did it, no change', 'same'],
  ['did that, still the same', 'same'],
  // No word on the remedy, or a question.
  ['did you mean the other plug', null],
  ['does it work with a hub?', null],
  ['the hand controller works fine', null],
  ['what lines?', null],
  ['the update said verified ok, and the hand controller works fine', null],
];

describe('what came of a remedy, in words', () => {
  it.each(TRIED)('“%s” is %s', (text, expected) => {
    expect(remedyOutcome(model.reading, text)).toBe(expected);
  });
});

/** Where the words hold no answer. */
const BACK: readonly (readonly [string, boolean])[] = [
  ['what speed', true],
  ['sorry, which plug', true],
  ['ok and where do i see that', true],
  ['is that the round one', true],
  ['when do i press it', true],
  ['the round one?', true],
  ['did that twice', false],
  ['the weather is lovely', false],
];

describe('what asks something back', () => {
  it.each(BACK)('“%s”: %s', (text, expected) => {
    expect(asksBack(model.reading.sayings.lexicon, text)).toBe(expected);
  });
});
