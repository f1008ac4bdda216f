/** What stands beside a walk's answers, typed by its label in a room or a thread. */
import { describe, expect, test } from 'vitest';
import { findTask } from '../../bot/platforms/matrix/answer/find-task.js';
import type { Content } from '../../bot/platforms/matrix/answer/matrix-event.js';
import { createOffers, type Offer } from '../../bot/platforms/matrix/answer/offers.js';
import { askedIn } from '../../bot/platforms/matrix/answer/read-message.js';
import type { PierhandMatrixClient } from '../../bot/platforms/matrix/connect/client.js';
import { BOT, NOW, ODALYS, said, TAMSIN } from './events.js';

const ROOM = '!hill:fenwold.test';
const ROOT = '$root';
const CHOICES = [
  { label: 'No change', run: 'triage walk:ab1 answer:park.same' },
  { label: 'Back a step', run: 'triage walk:ab1 do:back' },
  { label: 'Show the right entries', run: 'entries' },
];
const offer = (more: Partial<Offer> = {}): Offer => ({
  askerId: ODALYS,
  runs: CHOICES.map(({ run }) => run),
  choices: CHOICES,
  eventId: '$offer',
  threadRoot: null,
  offeredUtcMs: NOW,
  sinceMs: 0,
  ...more,
});
const IN_THREAD: Content = { 'm.relates_to': { rel_type: 'm.thread', event_id: ROOT } };

/** What is run of a line; the words themselves where it is none. */
const runOf = async (made: Offer, line: string, more: Content = {}, sender = ODALYS): Promise<string | null> => {
  const offers = createOffers({
    // Nothing here may ask the homeserver.
    client: {} as unknown as PierhandMatrixClient,
    botId: BOT,
    now: () => NOW,
    ticksMs: () => 1,
    lookUps: { take: () => 1 } as never,
  });
  offers.remember(ROOM, made);
  const event = said(line, more, sender);
  const asked = askedIn(event, { userId: BOT, names: [], prefix: '!pier' }, false);
  if (asked === null) return null;
  const task = await findTask(offers, () => null, { roomId: ROOM, event, asked, arrivedMs: 1 });
  if (task === null) return null;
  if ('line' in task.run) return task.run.line;
  return 'words' in task.run ? `words: ${task.run.words}` : null;
};

describe('a label typed on Matrix', () => {
  test('picks in the walk’s thread, and to the bot by name', async () => {
    const thread = offer({ threadRoot: ROOT });
    expect(await runOf(thread, 'please show me the right entries', IN_THREAD)).toBe('entries');
    expect(await runOf(thread, '3. show the right entries', IN_THREAD)).toBe('entries');
    expect(await runOf(offer(), '!pier go back a step')).toBe('triage walk:ab1 do:back');
  });

  test('leaves other words, answers, other members and old offers as they were', async () => {
    const thread = offer({ threadRoot: ROOT });
    expect(await runOf(thread, 'show me the right star', IN_THREAD)).toBe('words: show me the right star');
    expect(await runOf(thread, 'no change', IN_THREAD)).toBe('words: no change');
    expect(await runOf(thread, 'go back a step', IN_THREAD, TAMSIN)).toBeNull();
    expect(await runOf(offer(), 'go back a step')).toBeNull();
    expect(await runOf(offer({ offeredUtcMs: NOW - 31 * 60_000 }), '!pier go back a step')).toBe('go back a step');
  });
});
