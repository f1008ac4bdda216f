/** No change by the remedy, and cured by what the member did beside it; and questions about the doing. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { outcomeSaid } from '../../bot/reading/index.js';
import { answer, refusal } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

const { reading } = deps.triage();
const atRemedy = async (name: string) => {
  const who = member(name);
  const first = await answer(
    deps,
    'triage usb adapter at the hand controller, windows, it connects then drops when it slews, mount lamp blinks, mains supply',
    NOW,
    who,
  );
  const at = await goOn(who, first, (reply) => stepOf(reply).kind === 'try', 4);
  expect(stepOf(at).kind).toBe('try');
  const say = async (text: string) => answer(deps, `triage walk:${idOf(at)} text:"${text}"`, NOW, who);
  return { say, remedy: stepOf(at).id };
};

describe('cured by something else', () => {
  it.each([
    'no change. then i put 7 in and off she goes',
    'didnt help, but swapping the socket fixed it',
    'no change with that, it was the cable, new cable and its fine',
  ])('%s', (text) => {
    expect(outcomeSaid(reading, text)).toMatchObject({ what: 'unchanged', isCuredBesides: true });
  });

  it.each(['no change', 'no change at all, it works only by hand', 'still no change after that', 'it fixed nothing'])(
    '%s: is not',
    (text) => {
      expect(outcomeSaid(reading, text).isCuredBesides).toBeUndefined();
    },
  );

  it('is not put down to the remedy that changed nothing', async () => {
    const { say, remedy } = await atRemedy('Leofric');
    const told = await say('no change. then i put a new cable in and off she goes');
    expect(`${told.summary} ${told.notes.join(' ')}`).toMatch(/^(?:Fixed|Good to hear)/u);
    expect(stepOf(told)).not.toMatchObject({ kind: 'done', id: remedy });
    expect(JSON.stringify(told.choices)).not.toContain(`${remedy}.works`);
  });
});

describe('a remedy that could not be done', () => {
  // The two kinds that were unheard most: who owns it, and what is not at hand.
  it.each([
    'its not mine so i dont want to open it',
    'not tonight, i would have to drive home for it',
    'i could not because there is no lead',
  ])('%s', (text) => {
    expect(outcomeSaid(reading, text).what).toBe('could-not');
  });
});

describe('a question about the doing', () => {
  it.each(['is that safe', 'can i do that without turning it off', 'will that wipe my settings'])(
    '%s: is answered with care, and the remedy stands',
    async (text) => {
      const { say, remedy } = await atRemedy(`Sunniva${text.length}`);
      const told = await say(text);
      expect(told.notes.join(' ')).toContain('What needs care stands with the step');
      expect(stepOf(told).id).toBe(remedy);
    },
  );

  it('of the Sun it is answered by what judges it', async () => {
    const who = member('Signy');
    await answer(deps, 'triage the app on my phone will not connect to the mount', NOW, who);
    const told = await refusal(deps, 'is it safe to point at the sun', NOW, who);
    expect(told.message).toContain('solar filter');
  });

  it('how a thing is done with the phone is asked of the walk, whatever object bears its name', async () => {
    const who = member('Tuva');
    await answer(deps, 'triage the app on my phone will not connect to the mount', NOW, who);
    const told = await answer(deps, 'how do i forget a network on the iphone', NOW, who);
    expect(told.data['walkId']).toBeDefined();
  });
});
