/** Members who steer the mount from a phone or tablet: read as such, and never sent to a computer's own tools. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

const { reading } = deps.triage();

const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer: said }) => `${what}.${said}`);

// Tools, commands and port names of Windows, macOS and Linux (their own documents).
const OF_COMPUTERS =
  /Device Manager|sudo|\bCOM\b|\bCOM\d|\/dev\/|Command Prompt|PowerShell|Terminal|rfcomm|bluetoothctl|nmcli|ping -c|driver platform|this computer|\bMac\b/u;

const shownOf = (reply: Reply): string => linesOn(reply).join(' ').replace(/\s+/gu, ' ');

describe('a phone that the mount is steered from', () => {
  it.each([
    'Bluetooth connects fail every time on my phone, was ok last week.',
    "it's my phone, an android one, no computer",
    'there is no com port its a phone',
    'I have no computer, only an iPad',
    'i control it from my tablet and it finds nothing',
    'my iphone loses the mounts wifi after a minute',
    'android',
  ])('is read from "%s"', (text) => {
    expect(factsOf(text)).toContain('system.phone');
  });

  it.each([
    'it works on my phone',
    'laptop fails, phone works',
    'neither my phone nor the tablet gets a connection to the mount wifi',
    'on Windows it is refused, the iphone gets in',
    'I took a picture of the plugs with my phone, the laptop says time out',
    'my phone is charging from the hub',
    'the tablet does not connect either',
  ])('is not read from "%s"', (text) => {
    expect(factsOf(text)).not.toContain('system.phone');
  });
});

describe('a walk on a phone', () => {
  it.each([
    [
      'Beryl',
      'Bluetooth connects fail every time on my phone, was ok last week.',
      'bluetooth-held-elsewhere',
      {
        'bt-light': 'held',
        'bt-listed': 'paired',
        message: 'no-reply',
        'how-far': 'no-connect',
        'worked-before': 'same',
      },
    ],
    [
      'Osmund',
      "My android tablet loses the mount's own wifi after a minute.",
      'computer-hops-away',
      {
        'joined-network': 'hops',
        'how-far': 'drops',
        'when-drops': 'quiet',
        'worked-before': 'same',
        message: 'connects',
      },
    ],
    [
      'Nerys',
      'New tablet, an android one, on the wifi of the mount itself. The program says it cannot find the mount.',
      'phone-program-not-allowed',
      {
        'phone-allows': 'refused',
        'how-far': 'no-connect',
        'worked-before': 'first-time',
        'joined-network': 'mounts',
        message: 'not-found',
      },
    ],
    [
      'Solveig',
      "my tablet joins the mount's own wifi, the app says it cannot reach the mount. on my husbands phone the same app works",
      'phone-sends-by-mobile-data',
      {
        'without-mobile-data': 'works',
        'phone-allows': 'allowed',
        'how-far': 'no-connect',
        'worked-before': 'same',
        'joined-network': 'mounts',
        message: 'unreachable',
      },
    ],
  ] as const)('%s is cured, with no word of a computer', async (name, opening, cause, facts) => {
    const who = member(name);
    const known = new Map<string, string>(Object.entries(facts));
    let reply = await answer(deps, `triage ${opening}`, NOW, who);
    const seen = [shownOf(reply)];
    const say = async (line: string): Promise<void> => {
      reply = await answer(deps, line, NOW, who);
      seen.push(shownOf(reply));
    };
    for (let turn = 0; turn < 25 && !(stepOf(reply).kind === 'try' && stepOf(reply).id === cause); turn++) {
      const { kind, id } = stepOf(reply);
      expect(id).not.toBe('system');
      expect(kind, seen.at(-1)).not.toBe('handOn');
      const good = deps.triage().check(id)?.good ?? 'unsure';
      await say(`triage walk:${idOf(reply)} answer:${id}.${kind === 'try' ? 'same' : (known.get(id) ?? good)}`);
    }
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: cause });
    await say(`triage walk:${idOf(reply)} answer:${cause}.works`);
    expect(seen.at(-1)).toContain('Fixed');
    for (const text of seen) expect(text).not.toMatch(OF_COMPUTERS);
  });

  it.each(['bluetooth', 'bridge-own-network', 'bridge-house-network'])(
    'never names a tool of a computer on %s, however long it goes',
    async (path) => {
      const who = member(`Ives${path}`);
      let reply = await answer(deps, 'triage The mount does not connect', NOW, who);
      for (const line of [`path.${path}`, 'system.phone'])
        reply = await answer(deps, `triage walk:${idOf(reply)} answer:${line}`, NOW, who);
      const seen: string[] = [];
      await goOn(
        who,
        reply,
        (now) => {
          seen.push(shownOf(now));
          return stepOf(now).kind === 'handOn';
        },
        40,
      );
      expect(seen.length).toBeGreaterThan(5);
      for (const text of seen) expect(text).not.toMatch(OF_COMPUTERS);
    },
  );

  it('is another phone where the computer is known already', async () => {
    const who = member('Wenna');
    const first = await answer(deps, 'triage On Windows 11 the bluetooth link is refused', NOW, who);
    const then = await answer(deps, `triage walk:${idOf(first)} text:"my phone can not connect"`, NOW, who);
    const sheet = await answer(deps, `triage walk:${idOf(then)} do:summary`, NOW, who);
    expect(shownOf(sheet)).toContain('Windows');
    expect(shownOf(sheet)).not.toContain('Phone or tablet');
  });

  it('is offered where the computer is asked, and saved as gear', async () => {
    const who = member('Tegan');
    const saved = await answer(deps, 'gear system:phone', NOW, who);
    expect(shownOf(saved).toLowerCase()).toContain('phone or tablet');
  });
});
