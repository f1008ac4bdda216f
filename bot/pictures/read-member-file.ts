/** From a member's file to the text in it: a text file as it stands, a picture through the recogniser. Nothing is kept. */
import { MOST_FILE_BYTES, type MemberFile } from '../ground/member-file.js';
import { isProblem, problem, type Problem } from '../ground/problem.js';
import { pictureHeader } from './picture-header.js';
import type { PictureReader } from './picture-reader.js';

export const MOST_TEXT_BYTES = 1024 * 1024;

export interface FileText {
  readonly text: string;
  /** `log`: a text file; `picture`: recognised letters, which may have slips. */
  readonly by: 'log' | 'picture';
}

const fits = (encoding: string, bytes: Uint8Array): string | null => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};

/** By its byte order mark, else UTF-8, else the West European code page that older Windows programs write. */
const decoded = (bytes: Uint8Array): string | null => {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return fits('utf-16le', bytes.subarray(0, bytes.length & ~1));
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return fits('utf-16be', bytes.subarray(0, bytes.length & ~1));
  // A NUL is in no text, and in nearly every other file.
  if (bytes.subarray(0, 4096).includes(0)) return null;
  return fits('utf-8', bytes) ?? fits('windows-1252', bytes);
};

const SEND_INSTEAD = 'Send a text file of at most 1 MB, or a PNG, JPEG or WebP picture; or paste the lines themselves.';

/** Never rejects. Problems: file-too-large, not-text, empty-file, and what loading or the picture reader say. */
export const readMemberFile = async (pictures: PictureReader, file: MemberFile): Promise<FileText | Problem> => {
  if ((file.sizeBytes ?? 0) > MOST_FILE_BYTES)
    return problem('file-too-large', `That file is too large. ${SEND_INSTEAD}`);
  const bytes = await file.load();
  if (isProblem(bytes)) return bytes;
  if (pictureHeader(bytes) !== null) {
    const read = await pictures.read(bytes);
    return isProblem(read) ? read : { text: read.text, by: 'picture' };
  }
  if (bytes.length > MOST_TEXT_BYTES) return problem('file-too-large', `That file is too large. ${SEND_INSTEAD}`);
  const text = decoded(bytes)?.trim();
  if (text === undefined) return problem('not-text', `I cannot read that kind of file. ${SEND_INSTEAD}`);
  return text === '' ? problem('empty-file', `There is nothing in that file. ${SEND_INSTEAD}`) : { text, by: 'log' };
};
