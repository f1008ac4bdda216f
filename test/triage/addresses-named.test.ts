/** Addresses that a member gives. Which are private or link-local: RFC 1918, RFC 3927. How wide a house's network is: common practice. */
import { describe, expect, it } from 'vitest';
import { assess, startWalk, tellText } from '../../bot/triage/index.js';
import { deps } from './console-walk.js';

const model = deps.triage();
const told = (...texts: readonly string[]) => {
  let state = startWalk({ member: 'Ottoline', helper: null });
  let facts: readonly string[] = [];
  for (const text of texts) {
    const next = tellText(model, state, text, 'member');
    state = next.state;
    facts = next.read.facts.map(({ what, answer }) => `${what}=${answer}`);
  }
  return { state, facts };
};

describe('two addresses', () => {
  it.each([
    ['mount 192.168.7.20, laptop 192.168.1.14'],
    ['laptop ip 10.0.0.5 mount ip 192.168.1.80'],
    ['laptop: 169.254.12.77, mount: 192.168.0.40'],
    ['192.168.1.7 is the laptop, 192.168.2.7 is the mount'],
    ['i put 192.168.4.1 in the program, laptop has 192.168.178.24'],
    ['the mount is 172.16.0.9', 'my pc says 192.168.0.10'],
  ])('%s: in different networks', (...texts) => {
    expect(told(...texts).facts).toContain('joined-network=other');
  });

  it.each(['mount 192.168.1.20, laptop 192.168.1.14', 'mount 10.0.0.12 and laptop 10.0.0.7'])('%s: in one', (text) => {
    expect(told(text).facts).toContain('joined-network=mounts');
  });

  it('the program calls one, and the router lists another', () => {
    expect(told('my program has 192.168.1.40', 'the router lists the mount at 192.168.0.31').facts).toContain(
      'router-list=new-address',
    );
  });

  it.each([
    'gateway 192.168.0.1 laptop 192.168.0.15',
    'mount 192.168.1.44 netmask 255.255.255.0',
    'the mount used to be 192.168.1.5, now its 192.168.2.5',
    'ping 192.168.4.1 times out',
    'firmware 4.2.11.3 and version 2.1.0.4',
    'router 192.168.1.1 dns 8.8.8.8 laptop 192.168.1.9',
  ])('%s: nothing of the two', (text) => {
    expect(told(text).facts.filter((fact) => /^(?:joined-network|guest-network|router-list)/u.test(fact))).toEqual([]);
  });
});

describe('a phone', () => {
  it.each(['phone is still on mobile data 4g', 'the iphone uses cellular data instead'])(
    '%s: not on the mount’s network',
    (text) => {
      expect(told(text).facts).toContain('joined-network=other');
    },
  );

  it.each(['i switched mobile data off', 'my friend has mobile data and it works', '5g wifi is what my router has'])(
    '%s: no such thing',
    (text) => {
      expect(told(text).facts).not.toContain('joined-network=other');
    },
  );

  it('has the ways without a lead first', () => {
    const { step } = assess(model, told('the app on my phone will not connect to the mount').state);
    expect(step).toMatchObject({ id: 'path' });
    expect('paths' in step ? step.paths.slice(0, 3) : []).toEqual([
      'bridge-own-network',
      'bridge-house-network',
      'bluetooth',
    ]);
  });
});
