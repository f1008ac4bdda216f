/** The data folder: made where it is not there yet, and told apart from a path at which no folder can be. */
import { closeSync, existsSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import { StartError } from '../../ground/start-error.js';

/** What the system says of a path that no waiting makes right; a disk that cannot be written may be another day. */
const NO_SUCH_PLACE: ReadonlySet<string> = new Set(['ENOENT', 'ENOTDIR', 'EEXIST', 'ENAMETOOLONG', 'ELOOP']);

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException | null)?.code ?? '';

/** A level at a time: Node's own way of making all of them at once never ends below /proc. */
const makeFolder = (folder: string): void => {
  if (existsSync(folder)) return;
  if (dirname(folder) !== folder) makeFolder(dirname(folder));
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    // Another process was quicker.
    if (codeOf(error) !== 'EEXIST') throw error;
  }
};

/**
 * Makes the folder, and the file, for the bot's own user alone; so are the companions that SQLite makes after it.
 * @throws StartError where no folder can be there
 */
export const makeDatabaseFile = (file: string): void => {
  try {
    makeFolder(dirname(file));
    closeSync(openSync(file, 'a', 0o600));
  } catch (error) {
    if (!NO_SUCH_PLACE.has(codeOf(error))) throw error;
    throw new StartError(
      `PIERHAND_DATA must name a folder to keep things in (it is ${JSON.stringify(dirname(file))}, and no folder can be there: ${codeOf(error)}).`,
    );
  }
};
