/** What stands in the way may pass: a homeserver that is away or asks for patience, a disk that is full. */
import { diskTrouble } from '../../../store/store-failure.js';

/** What was tried may be tried again. `message` says why, in the operator's words. */
export class NotNow extends Error {
  constructor(
    message: string,
    /** How long the homeserver asks to wait, in milliseconds; 0 where it does not say. */
    readonly pauseMs: number,
  ) {
    super(message);
  }
}

/** @throws NotNow where nothing can be written to the data folder just now */
export const needWritable = (dataFolder: string): void => {
  const trouble = diskTrouble(dataFolder);
  if (trouble === null) return;
  const why = trouble === 'store-full' ? 'has no room left' : 'cannot be written';
  throw new NotNow(`PIERHAND_DATA: the disk of ${dataFolder} ${why}`, 0);
};
