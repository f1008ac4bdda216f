import { readFileSync } from 'node:fs';
import { afterEach, expect, it } from 'vitest';
import { startPage } from './start-page.js';
import { slowPictures } from '../doubles/slow-pictures.js';

const PICTURE = readFileSync('test/pictures/screens/attached-then-denied-1.png');
let page: Awaited<ReturnType<typeof startPage>> | undefined;
afterEach(() => page?.stop());

const say = async (address: string, words: Readonly<Record<string, string>>, picture?: Buffer): Promise<void> => {
  const form = new FormData();
  for (const [name, value] of Object.entries(words)) form.set(name, value);
  if (picture !== undefined) form.set('file', new Blob([new Uint8Array(picture)]), 'screen.png');
  const headers = { origin: new URL(address).origin };
  expect((await fetch(`${address}say?member=wilf`, { method: 'POST', body: form, headers })).status).toBe(200);
};

/** Follows what Wilf sees; resolves with all of it once it holds the words. */
const follow = async (address: string) => {
  const stop = new AbortController();
  const reader = (await fetch(`${address}events?member=wilf`, { signal: stop.signal })).body!.getReader();
  const decoder = new TextDecoder();
  let seen = '';
  return {
    until: async (words: string): Promise<string> => {
      while (!seen.includes(words)) {
        const { value } = (await reader.read()) as { value?: Uint8Array };
        seen += decoder.decode(value, { stream: true });
      }
      return seen;
    },
    stop: () => stop.abort(),
  };
};

it('a picture being read says so, and keeps nothing waiting that the same member asks after it', async () => {
  const { pictures, isRead } = slowPictures();
  page = await startPage({ pictures });
  const seen = await follow(page.address);
  await say(page.address, { text: '' }, PICTURE);
  await say(page.address, { text: 'sidereal site:52.71,0.12' });
  expect(await seen.until('The controller should show')).not.toContain('cannot even say');
  await seen.until('Reading the file');
  isRead();
  await seen.until('Hand controller');
  seen.stop();
});
