/** The story of a connection walk: from the first message to the verified cure, by a helper for another member, across a restart. */
import { expect } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { responseTo, type Response, type Trouble } from './someone-with-a-fault.js';
import { bare, type Shown, type Stage } from './stage.js';
import { shippedModel } from '../shipped.js';

const TROUBLE: Trouble = { faultId: 'no-permission', path: 'controller-serial', system: 'linux', client: 'direct' };
/**
 * What the kernel writes when an adapter has been given its port: Linux, drivers/usb/core/hub.c (first line) and
 * drivers/usb/serial/bus.c and usb-serial.c (the others). Times and numbers are invented.
 */
const KERNEL_LOG =
  '[  963.561201] usb 1-2: new full-speed USB device number 5 using xhci_hcd ' +
  '[  963.837102] usbserial_generic 1-2:1.0: USB serial converter detected ' +
  '[  963.837493] usb 1-2: USB serial converter now attached to ttyUSB0';
const MOST_TURNS = 25;

export const connectionWalk = async <S extends Shown>(stage: Stage<S>): Promise<void> => {
  const { helper, member } = stage;
  const model = shippedModel();
  const answered = readText(model.reading, KERNEL_LOG)
    .facts.map(({ what }) => what)
    .filter((what) => model.check(what) !== undefined);
  expect(answered.length).toBeGreaterThan(0);

  let shown = await helper.asks(`triage for:${member.name} ${KERNEL_LOG}`);
  expect(shown.isPrivate).toBe(false);
  expect(bare(shown.text)).toContain(bare('I take it:'));

  // Both answer in turn; between a question and its answer the bot is stopped and another started.
  const taken: Response[] = [];
  for (let turn = 0; taken.at(-1)?.id !== TROUBLE.faultId; turn++) {
    if (turn === MOST_TURNS)
      throw new Error(`no cure after ${turn} turns: ${taken.map(({ id, label }) => `${id}: ${label}`).join('; ')}`);
    if (turn === 2) {
      await stage.restart();
      const resumed = await helper.asks('triage');
      expect(responseTo(model, TROUBLE, resumed.text)).toEqual(responseTo(model, TROUBLE, shown.text));
    }
    const response = responseTo(model, TROUBLE, shown.text);
    // The member stands at the mount, and sees the cure; a question shown before the restart is still good.
    const speaker = response.kind === 'try' || turn % 2 === 0 ? member : helper;
    shown = await speaker.picks(shown, response.label);
    taken.push(response);
  }
  const asked = taken.map(({ id }) => id);
  expect(asked).not.toContain('system');
  for (const id of answered) expect(asked).not.toContain(id);

  expect(bare(shown.text)).toContain(bare(`Fixed: ${model.fault(TROUBLE.faultId)?.title}.`));
  expect(bare(shown.text)).toContain(bare('May I count this cause for the club, without your name?'));

  const summary = await helper.asks('triage do:summary');
  expect(bare(summary.text)).toContain(bare('now attached to ttyUSB0'));
  expect(bare(summary.text)).toContain(bare(`${model.fault(TROUBLE.faultId)?.title}: it works`));

  // Only the one whose mount it is may let it be counted.
  shown = await helper.picks(summary, 'Go on');
  const refused = await helper.picks(shown, 'Yes, count it');
  expect(refused.text).toContain('Only the one whose mount it is');
  expect(await stage.store().outcomes.counts(stage.clubId)).toEqual({});
  const counted = await member.picks(shown, 'Yes, count it');
  expect(counted.text).toContain('Counted, without your name');
  expect(await stage.store().outcomes.counts(stage.clubId)).toEqual({ [TROUBLE.faultId]: 1 });
  expect(await stage.store().walks.active(stage.clubId, member.memberId)).toBeNull();
};
