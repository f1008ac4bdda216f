/** The SDK can be imported whether or not its native encryption package has its binary. */
import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';

const succeeds = (code: string, ...flags: readonly string[]): boolean =>
  spawnSync(process.execPath, [...flags, '--input-type=module', '-e', code]).status === 0;

test('through the stand-in the SDK always loads, and the bot knows whether encryption works', () => {
  const sdkAlone = succeeds('await import("matrix-bot-sdk");');
  const present = sdkAlone ? 'true' : 'false';
  expect(
    succeeds(
      `
    const { MatrixClient } = await import("./bot/platforms/matrix/connect/sdk.ts");
    const { nativeCrypto } = await import("./bot/platforms/matrix/connect/native-crypto.ts");
    if (typeof MatrixClient !== "function" || (nativeCrypto !== null) !== ${present}) process.exit(1);
  `,
      '--import',
      'tsx',
    ),
  ).toBe(true);
});
