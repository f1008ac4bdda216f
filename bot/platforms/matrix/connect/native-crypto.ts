/** Stands in for the SDK's native encryption package where its binary is missing, so that the SDK can be imported at all. */
import type * as Native from '@matrix-org/matrix-sdk-crypto-nodejs';
import Module, { createRequire } from 'node:module';

const PACKAGE = '@matrix-org/matrix-sdk-crypto-nodejs';

export type NativeCrypto = typeof Native;

/**
 * The SDK requires the package at import, and the package throws where its binary was not downloaded. An empty module
 * under the same file name in the module cache is what the SDK then finds; it uses it only once encryption is asked for.
 */
const loadOrStandIn = (): NativeCrypto | null => {
  const requireAsSdk = createRequire(createRequire(import.meta.url).resolve('matrix-bot-sdk'));
  try {
    return requireAsSdk(PACKAGE) as NativeCrypto;
  } catch {
    const file = requireAsSdk.resolve(PACKAGE);
    const standIn = new Module(file);
    standIn.filename = file;
    standIn.loaded = true;
    standIn.exports = {};
    requireAsSdk.cache[file] = standIn;
    return null;
  }
};

/** Null where encryption cannot work. This module must be imported before the SDK; `sdk.ts` sees to that. */
export const nativeCrypto = loadOrStandIn();
