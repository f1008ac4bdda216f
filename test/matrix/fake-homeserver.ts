/** A homeserver of a few lines for tests that need one part of it alone; the real one is in test/homeserver. */
import { PierhandMatrixClient } from '../../bot/platforms/matrix/connect/client.js';
import type { Call } from '../../bot/platforms/matrix/connect/homeserver-call.js';

export type Answer = (call: Call) => unknown;

/** @param answer may throw, as the server or the network would */
export const clientOf = (
  answer: Answer,
): { readonly client: PierhandMatrixClient; readonly calls: readonly Call[] } => {
  const calls: Call[] = [];
  const homeserver = {
    call: async (call: Call) => {
      calls.push(call);
      return answer(call);
    },
  };
  return { client: new PierhandMatrixClient('http://127.0.0.1:1', 'token', homeserver), calls };
};
