import { describe, expect, it } from 'vitest';
import { problem } from '../../bot/ground/problem.js';
import { readMemberFile } from '../../bot/pictures/read-member-file.js';
import type { PictureReader } from '../../bot/pictures/picture-reader.js';

const noPictures: PictureReader = { read: async () => ({ text: 'seen', confidencePercent: 90 }), close: () => {} };

const sent = (bytes: Uint8Array, sizeBytes: number | null = bytes.length) =>
  readMemberFile(noPictures, { name: '../../etc/passwd', sizeBytes, load: async () => bytes });

describe('a file a member sends', () => {
  it('is read as the text it holds, whatever program wrote it', async () => {
    expect(await sent(Buffer.from('größer: Zugriff verweigert\n'))).toEqual({
      text: 'größer: Zugriff verweigert',
      by: 'log',
    });
    expect(await sent(Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from('Code 10', 'utf16le')]))).toMatchObject({
      text: 'Code 10',
    });
    // Windows-1252 (the Encoding Standard's table): E4 is ä.
    expect(await sent(Buffer.from([0x47, 0x65, 0x72, 0xe4, 0x74]))).toMatchObject({ text: 'Gerät' });
    expect(await sent(Buffer.from('\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01', 'latin1'))).toEqual({
      text: 'seen',
      by: 'picture',
    });
  });

  it('is refused kindly when it is too large, no text, empty, or cannot be fetched', async () => {
    expect(await sent(Buffer.from('x'), 11 * 1024 * 1024)).toMatchObject({ problem: 'file-too-large' });
    expect(await sent(Buffer.alloc(1024 * 1024 + 1, 'x'))).toMatchObject({ problem: 'file-too-large' });
    expect(await sent(Buffer.from('PK\x03\x04\0\0\0\0'))).toMatchObject({ problem: 'not-text' });
    expect(await sent(Buffer.from(' \n '))).toMatchObject({ problem: 'empty-file' });
    const lost = problem('file-gone', 'That file is no longer there. Send it again.');
    expect(await readMemberFile(noPictures, { name: 'a', sizeBytes: null, load: async () => lost })).toEqual(lost);
  });
});
