/** A file named on the console, where whoever types may read the machine's own files. */
import { openAsBlob } from 'node:fs';
import { stat } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import { MOST_FILE_BYTES, type MemberFile } from '../../ground/member-file.js';
import { problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';

const absolute = (given: string): string => path.resolve(given.replace(/^~(?=\/|$)/u, homedir()));

/** `given`: a path as typed, `~` for the home folder. Nothing is read before a command asks for it. */
export const fileOnDisk = (given: string): MemberFile => {
  const file = absolute(given);
  const name = tidy(path.basename(file), 80);
  return {
    name,
    sizeBytes: null,
    load: async () => {
      try {
        const found = await stat(file);
        if (!found.isFile()) return problem('no-file', `"${name}" is not a file.`);
        if (found.size > MOST_FILE_BYTES)
          return problem('file-too-large', `"${name}" is larger than 10 MB. Copy out the part that matters.`);
        return new Uint8Array(await (await openAsBlob(file)).arrayBuffer());
      } catch {
        return problem('no-file', `I cannot read "${name}". Is the path right? It is taken from ${process.cwd()}.`);
      }
    },
  };
};
