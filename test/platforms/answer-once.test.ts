/** One question is answered once, over repeats, another process and a restart; a store that fails or dawdles keeps nobody waiting. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { createAnswerOnce, type OnceOptions } from '../../bot/platforms/shared/answer-once.js';
import { openStore } from '../../bot/store/open-store.js';
import type { Store } from '../../bot/store/store.js';

const NOW = Date.UTC(2026, 10, 26, 21);
const log = createLog('silent', []);
const over = (events: Partial<Store['events']>, options?: OnceOptions) =>
  createAnswerOnce({ deps: { store: { events } } as unknown as Deps, log, now: () => NOW }, options);

describe('a question', () => {
  let store: Store;
  beforeEach(async () => {
    store = await openStore({ memory: true });
  });
  afterEach(() => store.close());

  it('is claimed by one process, once', async () => {
    const [one, other] = [over(store.events), over(store.events)];
    expect(one.isSeen('letters:1')).toBe(false);
    expect(await one.claim('letters:1')).toBe('first');
    expect(one.isSeen('letters:1')).toBe(true);
    expect(await one.claim('letters:1')).toBe('again');
    expect(await other.claim('letters:1')).toBe('again');
  });

  it('that a process died over is taken up once by the next', async () => {
    await over(store.events).claim('letters:1');
    const next = over(store.events, { leftOver: new Set(await store.events.unanswered('letters:', 0)) });
    expect(await next.claim('letters:1')).toBe('left-over');
    expect(await next.claim('letters:1')).toBe('again');
  });

  it('that is settled is left over to nobody', async () => {
    const once = over(store.events);
    await once.claim('letters:1');
    await once.settle('letters:1');
    expect(await store.events.unanswered('letters:', 0)).toEqual([]);
  });
});

describe('a store', () => {
  const down = () => Promise.reject(new Error('the store does not answer'));

  it('that fails leaves it to the memory of this process', async () => {
    const once = over({ claim: down, answered: down });
    expect(await once.claim('letters:1')).toBe('first');
    expect(await once.claim('letters:1')).toBe('again');
    await expect(once.settle('letters:1')).resolves.toBeUndefined();
  });

  it('that dawdles is waited for as long as there is patience', async () => {
    vi.useFakeTimers();
    const never = () => new Promise<boolean>(() => undefined);
    const claimed = over({ claim: never }, { patienceMs: 600 }).claim('letters:1');
    const onClaimed = vi.fn();
    void claimed.then(onClaimed);
    await vi.advanceTimersByTimeAsync(599);
    expect(onClaimed).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(await claimed).toBe('first');
    vi.useRealTimers();
  });
});
