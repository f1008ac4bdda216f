/**
 * Adds the native library that encrypted Matrix rooms need: `npm run matrix:encryption` fetches it from its maker, with a path
 * behind `--` (or in MATRIX_ENCRYPTION_LIBRARY) it takes that file. Says in one line what it did, or why it could not; exit code 1 then.
 * Needs no development package, so that it works in a pruned installation and in the container's build.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { createRequire } from 'node:module';
import path from 'node:path';

const PACKAGE = '@matrix-org/matrix-sdk-crypto-nodejs';
const FETCH_PATIENCE_MS = 5 * 60_000;

/** Thrown for what the operator is to read; anything else is a fault of this script. */
const cannot = (why) => Object.assign(new Error(why), { isForOperator: true });

const packageFolder = () => {
  const here = createRequire(path.resolve('package.json'));
  try {
    const fromSdk = createRequire(here.resolve('matrix-bot-sdk'));
    return path.dirname(fromSdk.resolve(`${PACKAGE}/package.json`));
  } catch {
    throw cannot('the Matrix packages are not installed here: run npm ci in this folder first');
  }
};

/** The name under which the package looks for the library on this kind of machine (its index.js). */
const libraryName = () => {
  const { platform, arch, report } = process;
  const libc = report?.getReport().header.glibcVersionRuntime === undefined ? 'musl' : 'gnu';
  const names = {
    'linux-x64': `linux-x64-${libc}`,
    'linux-arm64': libc === 'gnu' ? 'linux-arm64-gnu' : null,
    'linux-arm': 'linux-arm-gnueabihf',
    'linux-s390x': 'linux-s390x-gnu',
    'darwin-x64': 'darwin-x64',
    'darwin-arm64': 'darwin-arm64',
    'win32-x64': 'win32-x64-msvc',
    'win32-ia32': 'win32-ia32-msvc',
    'win32-arm64': 'win32-arm64-msvc',
  };
  const name = names[`${platform}-${arch}`] ?? null;
  if (name === null) throw cannot(`its maker offers no library for ${platform} ${arch} (${libc})`);
  return `matrix-sdk-crypto.${name}.node`;
};

/** Loads it in a process of its own, as a bad library may bring the process down, and has it encrypt and decrypt. */
const CHECK = `
  const { Attachment, EncryptedAttachment, OlmMachine, UserId, DeviceId } = require(process.argv[1]);
  const locked = Attachment.encrypt(Buffer.from('pier'));
  const opened = Attachment.decrypt(new EncryptedAttachment(locked.encryptedData, locked.mediaEncryptionInfo));
  if (Buffer.from(opened).toString() !== 'pier' || Buffer.from(locked.encryptedData).toString() === 'pier') process.exit(3);
  OlmMachine.initialize(new UserId('@pier:example.org'), new DeviceId('CHECK')).then(
    (machine) => process.exit(machine.identityKeys.ed25519.toBase64().length > 40 ? 0 : 4),
    () => process.exit(5));
`;
const works = (folder) =>
  spawnSync(process.execPath, ['-e', CHECK, folder], { stdio: 'ignore', timeout: 60_000 }).status === 0;

/** The maker's own downloader: it goes by the proxy settings, and always ends well, so that only the outcome tells. */
const fetchFromMaker = (folder, file) => {
  const { error, stdout, stderr } = spawnSync(process.execPath, ['download-lib.js'], {
    cwd: folder,
    encoding: 'utf8',
    timeout: FETCH_PATIENCE_MS,
  });
  if (error?.code === 'ETIMEDOUT') throw cannot('the download did not end within five minutes');
  if (!existsSync(file)) {
    const said = `${stdout}\n${stderr}`;
    const reason = /\b(E[A-Z]{4,}|Response status was \d{3}|[45]\d\d)\b/u.exec(said)?.[1] ?? 'no file came';
    throw cannot(
      `the download from its maker (github.com) failed (${reason}); a file fetched elsewhere can be given: npm run matrix:encryption -- FILE`,
    );
  }
};

/** Copied beside its place and moved there, so that there is never half a library. */
const takeFile = (given, file) => {
  try {
    copyFileSync(given, `${file}.new`);
    renameSync(`${file}.new`, file);
  } catch (error) {
    rmSync(`${file}.new`, { force: true });
    throw cannot(`${given} cannot be copied (${error.code})`);
  }
};

const add = () => {
  const folder = packageFolder();
  const { version } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const file = path.join(folder, libraryName());
  const given = process.argv[2] ?? process.env.MATRIX_ENCRYPTION_LIBRARY ?? '';
  if (existsSync(file) && works(folder)) return `Encryption is there already (library ${version}).`;
  rmSync(file, { force: true });
  if (given === '') fetchFromMaker(folder, file);
  else takeFile(path.resolve(given), file);
  const sum = createHash('sha256').update(readFileSync(file)).digest('hex');
  if (!works(folder)) {
    rmSync(file, { force: true });
    throw cannot(`the library (sha256 ${sum}) does not work on this machine with version ${version} of its package`);
  }
  return `Encryption is there (library ${version}, sha256 ${sum}). Restart the bot.`;
};

try {
  console.log(add());
} catch (error) {
  if (error.isForOperator !== true) throw error;
  console.error(`No encryption: ${error.message}.`);
  process.exitCode = 1;
}
