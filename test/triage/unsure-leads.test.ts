/** A lead whose pins nobody measured stays out of the mount, and another supply goes in only as it must. The rules are common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { shippedModel } from '../shipped.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const cautionsOf = ({ cautions }: Reply): string => cautions.join('\n');

describe('a home-made lead', () => {
  const opening =
    'triage the lead to the mount is home-made, i soldered it myself from a drawing. windows, port opens, no answer';

  it('is said to stay out before the way to the mount is known', async () => {
    const reply = await answer(deps, opening, NOW, member('Pernelle-Lead'));
    expect(stepOf(reply).id).toBe('path');
    expect(cautionsOf(reply)).toMatch(/pin order you do not know[^]*12 V/u);
  });

  it.each(['controller-serial', 'board-cable'])(
    'has its pins asked after first of all but the level, by %s',
    async (way) => {
      const who = member(`Quill ${way}`);
      let reply = await answer(deps, opening, NOW, who);
      reply = await answer(deps, `triage walk:${idOf(reply)} answer:path.${way}`, NOW, who);
      if (stepOf(reply).id === 'lead-level')
        reply = await answer(deps, `triage walk:${idOf(reply)} answer:lead-level.logic`, NOW, who);
      expect(stepOf(reply).id).toBe('pin-order');
      for (const said of ['not-measured', 'unsure']) {
        const after = await answer(deps, `triage walk:${idOf(reply)} answer:pin-order.${said}`, NOW, who);
        expect(stepOf(after).id).toBe('home-made-lead-pins');
        reply = await answer(deps, `triage walk:${idOf(after)} do:back`, NOW, who);
      }
      reply = await answer(deps, `triage walk:${idOf(reply)} answer:pin-order.measured`, NOW, who);
      expect(stepOf(reply).id).not.toBe('home-made-lead-pins');
    },
  );

  it('is none where the lead was bought, or feeds the mount', async () => {
    for (const [i, words] of [
      'bought lead from adapter to the handset, port opens, no answer, windows',
      'i soldered a new power plug, adapter in the handset, port opens, no answer, windows',
    ].entries()) {
      const reply = await answer(deps, `triage ${words}`, NOW, member(`Ravenna ${i}`));
      expect(stepOf(reply).id).not.toBe('pin-order');
      expect(cautionsOf(reply)).not.toMatch(/pin order/u);
    }
  });
});

describe('another supply', () => {
  it('is never proposed without its plus and minus, its fuse and the engine', () => {
    const model = shippedModel();
    const proposing = model.faults.filter(({ remedy }) =>
      /\b(?:another supply|use a supply|charged battery|thicker lead)\b/iu.test(JSON.stringify(remedy.steps)),
    );
    expect(proposing.map(({ id }) => id).sort()).toEqual([
      'battery-low',
      'brown-out-lead',
      'brown-out-supply',
      'supply-dead',
    ]);
    for (const { id, remedy } of proposing) expect(remedy.cautions, id).toContain('another-supply');
  });
});
