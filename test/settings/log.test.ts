import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { createLog } from '../../bot/app/log.js';

const TOKEN = 'mfa.made-up-"token"\\x';

const logging = () => {
  const sink = new PassThrough();
  let text = '';
  sink.on('data', (chunk: Buffer) => {
    text += chunk.toString('utf8');
  });
  return { log: createLog('info', [TOKEN], sink), text: () => text };
};

describe('the log', () => {
  it('is one JSON object a line, with level and time in words', () => {
    const { log, text } = logging();
    log.info({ shard: 0 }, 'connected');
    expect(JSON.parse(text())).toMatchObject({
      level: 'info',
      shard: 0,
      msg: 'connected',
      time: expect.stringMatching(/^20\d\d-.*Z$/u) as string,
    });
  });

  it('leaves a secret out wherever it turns up: in a message, an error, a field, a nested field', () => {
    const { log, text } = logging();
    log.warn(
      { err: new Error(`refused ${TOKEN}`), token: 'other', headers: { authorization: 'Bearer x1' } },
      `with ${TOKEN}`,
    );
    expect(text()).not.toMatch(/made-up|other|Bearer/u);
    expect(text().match(/\[secret\]/gu)?.length).toBeGreaterThanOrEqual(4);
    expect(() => JSON.parse(text()) as unknown).not.toThrow();
  });

  it('leaves out interaction tokens in addresses, and what members wrote in failed requests', () => {
    const { log, text } = logging();
    log.warn(
      {
        err: Object.assign(new Error('POST https://discord.com/api/v10/interactions/123/aW50ZXJhY3Rpb24/callback'), {
          status: 500,
          requestBody: { json: { content: 'at 52.71,0.12' } },
        }),
      },
      'failed',
    );
    expect(text()).toContain('/interactions/123/[secret]');
    expect(text()).not.toMatch(/aW50|52\.71/u);
    expect(JSON.parse(text())).toMatchObject({ err: { status: 500 } });
  });
});
