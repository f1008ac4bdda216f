/** Whether this machine has the native encryption library, for the suites that need it. */
import { existsSync } from 'node:fs';
import path from 'node:path';

const NAME = 'matrix-sdk-crypto.linux-x64-gnu.node';

/** A file that can be copied to where the package looks for it: there already, or beside the checkout; null where there is none. */
export const nativeLibrary = (): string | null =>
  [`node_modules/@matrix-org/matrix-sdk-crypto-nodejs/${NAME}`, `../shared/native/${NAME}`]
    .map((file) => path.resolve(file))
    .find((file) => existsSync(file)) ?? null;
