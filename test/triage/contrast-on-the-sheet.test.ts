/** The sheet for a helper keeps what a member sets against what, near its top and within bounds. The stories are our own. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW } from './console-walk.js';

let members = 0;
const sheetOf = async (name: string, ...lines: readonly string[]) => {
  members += 1;
  const who = member(`${name}${members}`);
  const [first = '', ...rest] = lines;
  let reply = await answer(deps, `triage ${first}`, NOW, who);
  const id = idOf(reply);
  for (const line of [...rest, 'a person please'])
    reply = await answer(deps, `triage walk:${id} text:"${line}"`, NOW, who);
  return reply;
};

describe('what is set against what', () => {
  it.each([
    [
      'it works at home on the kitchen table, not at the field',
      'usb adapter at the handset, windows, it works at home on the kitchen table, not at the field. drops after a few minutes',
      'i think it is the cold making the plug shrink',
      'my other lead does the same',
    ],
    [
      'fine on the old router, since the new one it drops',
      'mac, bridge in the house network. fine on the old router, since the new one it drops every evening around 8. i blame the new router',
      "my wife's tablet connects fine",
    ],
    [
      'connects without the camera, never with it',
      'linux, usb straight into the mount',
      'it connects without the camera, never with it, and I have swapped every lead in the box by now',
      'the hub is a big one',
    ],
  ])('stands in their words: %s', async (kept, ...lines) => {
    const reply = await sheetOf('Ingeld', ...lines);
    const words = reply.facts.map(({ value }) => value).join(' ');
    expect(words).toContain(kept);
    const at = reply.facts.findIndex(({ value }) => value.includes(kept));
    const stands = reply.facts.findIndex(({ label }) => label === 'Stands');
    expect(at).toBeLessThanOrEqual(2);
    if (stands >= 0) expect(at).toBeLessThan(stands);
    // One screen of a phone, with some lines to spare.
    expect(linesOn(reply).length).toBeLessThanOrEqual(40);
  });

  it('a cause that the member named stands beside it, and what was tried with what came of it', async () => {
    const reply = await sheetOf(
      'Ingrith',
      'usb adapter at the handset, windows, device manager shows code 28',
      'no change',
      'i suspect the firewall',
    );
    const said = Object.fromEntries(reply.facts.map(({ label, value }) => [label, value]));
    expect(said['Suspects']).toContain('firewall');
    expect(said['Tried']).toContain('The adapter has no driver: no change');
  });
});
