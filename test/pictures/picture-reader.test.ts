import { fork } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { createPictureReader } from '../../bot/pictures/picture-reader.js';

const screen = (file: string): Buffer => readFileSync(path.join(import.meta.dirname, 'screens', file));

const chunk = (type: string, data: Buffer): Buffer => {
  const body = Buffer.concat([Buffer.from(type), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
};

/** A PNG by ISO/IEC 15948: one bit a pixel, grey, all black, so that millions of pixels are a few kilobytes. */
const blackPng = (widthPx: number, heightPx: number, rows = heightPx): Buffer => {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.set([1, 0, 0, 0, 0], 8);
  const lines = Buffer.alloc(rows * (1 + Math.ceil(widthPx / 8)));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(lines)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
};

const reader = createPictureReader();
afterAll(() => reader.close());

describe('a picture a member sends', () => {
  it('is read: dark, light, tilted or WebP', { timeout: 60_000 }, async () => {
    expect(await reader.read(screen('disconnects-1.png'))).toMatchObject({
      text: expect.stringContaining('USB disconnect, device number 11') as string,
    });
    expect(await reader.read(screen('code-10-1.jpg'))).toMatchObject({
      text: expect.stringMatching(/cannot start.*Code 10/su) as string,
    });
    expect(await reader.read(screen('refused-1.webp'))).toMatchObject({
      text: expect.stringContaining('(10061)') as string,
    });
  });

  it(
    'is answered with a kind word when it holds no text, is no picture, or is broken',
    { timeout: 60_000 },
    async () => {
      const whole = screen('code-10-2.png');
      const answers = await Promise.all([
        reader.read(blackPng(300, 200)),
        reader.read(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')),
        reader.read(Buffer.alloc(0)),
        reader.read(whole.subarray(0, 300)),
        reader.read(blackPng(0, 10)),
      ]);
      for (const answer of answers) {
        expect(answer).toMatchObject({ problem: expect.stringMatching(/picture/u) as string });
        expect('message' in answer && answer.message).toMatch(/paste|copy/u);
      }
      // And the next one is read as if nothing had been.
      expect(await reader.read(whole)).toHaveProperty('text');
    },
  );

  it('is turned away by size before anything is unpacked: bytes, and pixels a small file claims', async () => {
    expect(await reader.read(Buffer.concat([screen('code-10-2.png'), Buffer.alloc(10 * 1024 * 1024)]))).toMatchObject({
      problem: 'picture-too-large',
    });
    expect(await reader.read(blackPng(60_000, 60_000, 4))).toMatchObject({ problem: 'picture-too-large' });
  });

  it('survives forty million black pixels in a small file', { timeout: 60_000 }, async () => {
    const bomb = blackPng(6300, 6300);
    expect(bomb.length).toBeLessThan(20_000);
    expect(await reader.read(bomb)).toHaveProperty('problem');
    expect(await reader.read(screen('no-reply-2.jpg'))).toHaveProperty('text');
  });

  it('that takes too long is given up, and the next is read by a fresh process', { timeout: 60_000 }, async () => {
    const hasty = createPictureReader({ readWithinMs: 1 });
    expect(await hasty.read(screen('code-10-2.png'))).toMatchObject({ problem: 'picture-too-slow' });
    hasty.close();
  });

  it('waits its turn, and is turned away kindly when many wait', { timeout: 60_000 }, async () => {
    const narrow = createPictureReader({ mostWaiting: 1 });
    const answers = await Promise.all([1, 2, 3, 4].map(() => narrow.read(screen('no-reply-2.jpg'))));
    narrow.close();
    expect(answers.map((answer) => ('problem' in answer ? answer.problem : 'read'))).toEqual([
      'read',
      'read',
      'busy',
      'busy',
    ]);
  });

  it('leaves no process behind when none has come for a while', { timeout: 60_000 }, async () => {
    const brief = createPictureReader({ endAfterIdleMs: 50 });
    await brief.read(screen('no-reply-2.jpg'));
    const mine = `/proc/${process.pid}/task/${process.pid}/children`;
    if (!existsSync(mine)) return;
    const children = (): number => readFileSync(mine, 'utf8').split(' ').filter(Boolean).length;
    const before = children();
    await expect.poll(children, { timeout: 5000 }).toBeLessThan(before);
  });
});

describe('the built program', () => {
  it('reads pictures as the source does (npm test builds first)', { timeout: 60_000 }, async () => {
    const built = path.resolve(import.meta.dirname, '../../dist/bot/pictures/picture-process.js');
    const child = fork(built, [], { serialization: 'advanced', env: {}, execArgv: [] });
    const answer = new Promise((resolve) => child.once('message', resolve));
    child.send(screen('code-10-2.png'));
    expect(await answer).toMatchObject({ text: expect.stringContaining('(Code 10)') as string });
    child.kill();
  });
});
