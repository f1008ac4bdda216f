/** What members tell of a phone in hand: what they answered it, what it shows, and another that does well. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const toldIn = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

// That phones ask so: Android Developers, unvalidated networks; Apple Support, Wi-Fi without internet (from memory).
describe('a phone told to leave the network without internet', () => {
  it.each([
    'it asked something about no internet stay connected?? i clicked no',
    'it asked stay connected without internet and i said no',
    'phone popped up keep using wifi without internet, i hit cancel',
    'the phone said this wifi has no internet, use mobile data? i tapped yes',
    'it wanted to know if i stay on this network, tapped no',
    'there was a message about no internet access and i pressed switch to mobile',
  ])('%s', (text) => {
    const { facts } = readText(reading, text);
    const joined = facts.find(({ what }) => what === 'joined-network');
    expect([joined?.answer, ...(joined?.or ?? [])]).toContain('other');
    expect(facts.find(({ what }) => what === 'system')?.answer).toBe('phone');
  });

  it.each([
    'it asked to stay connected without internet and I said yes',
    'there is no internet out here, I said no to the driver update',
    'the laptop has no internet, it asked to update and i clicked no',
  ])('%s: is not told so', (text) => {
    expect(toldIn(text)).not.toContain('joined-network.other');
  });
});

describe('of two phones or tablets the one that fails', () => {
  it.each([
    'phone on the mounts own wifi, app wont connect, tablet connects fine',
    'my phone cannot control the mount any more. app says not connected. tablet works',
    'the ipad wont connect but my phone does',
    'my wifes tablet gets in, my phone doesnt',
  ])('is the one in hand: %s', (text) => {
    expect(toldIn(text)).toEqual(expect.arrayContaining(['system.phone', 'other-computer.works']));
    expect(toldIn(text)).not.toContain('works-with-phone.works');
  });

  it.each(['laptop fails, tablet works', 'the phone connects, the tablet too, the pc does not'])(
    'is not, beside a computer: %s',
    (text) => {
      expect(toldIn(text)).not.toContain('system.phone');
    },
  );

  it('is new', () => {
    expect(toldIn('new phone since last week')).toEqual(
      expect.arrayContaining(['worked-before.changed', 'changed-last.computer']),
    );
  });
});

describe('a cause doubted aloud', () => {
  it.each([
    ['how can it be the socket when the tablet works', 'works-with-phone.works'],
    ['how can it be the cable if the other laptop connects with it??', 'other-computer.works'],
  ])('tells its reason: %s', (text, fact) => {
    expect(toldIn(text)).toContain(fact);
  });

  it('is a question where no reason is told', () => {
    expect(toldIn('how can it be the socket?')).toEqual([]);
  });
});
