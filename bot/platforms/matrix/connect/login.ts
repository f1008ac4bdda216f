/** Gets the bot an access token that works: the operator's own, or one from a single login with a password, kept for later starts. */
import { chmod, mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { StartError } from '../../../ground/start-error.js';
import type { MatrixSettings } from '../../../app/settings.js';
import { askedPauseMs, homeserverAt, isLimit, Unreachable, type Homeserver } from './homeserver-call.js';
import type { Content } from '../answer/matrix-event.js';
import { isRecord, textAt } from '../answer/matrix-event.js';
import { needWritable, NotNow } from './not-now.js';
import { MatrixError } from './sdk.js';

export interface Session {
  readonly accessToken: string;
  readonly userId: string;
  readonly deviceId: string | null;
}

interface KeptSession extends Session {
  readonly homeserverUrl: string;
  readonly user: string;
}

const START_PATIENCE_MS = 5000;
export const SESSION_FILE = 'matrix-session.json';

const readKept = async (file: string, homeserverUrl: string, user: string): Promise<KeptSession | null> => {
  try {
    const kept: unknown = JSON.parse(await readFile(file, 'utf8'));
    if (!isRecord(kept) || kept['homeserverUrl'] !== homeserverUrl || kept['user'] !== user) return null;
    const accessToken = textAt(kept, 'accessToken');
    const userId = textAt(kept, 'userId');
    return accessToken === null || userId === null
      ? null
      : { homeserverUrl, user, accessToken, userId, deviceId: textAt(kept, 'deviceId') };
  } catch {
    // Absent or damaged: log in again.
    return null;
  }
};

/** Whole or not at all, readable by the owner alone. */
const keep = async (file: string, session: KeptSession): Promise<void> => {
  try {
    await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
    const fresh = `${file}.new`;
    await writeFile(fresh, JSON.stringify(session), { mode: 0o600 });
    await chmod(fresh, 0o600);
    await rename(fresh, file);
  } catch (error) {
    throw new StartError(
      `PIERHAND_DATA: the Matrix login cannot be kept in ${file} (${(error as NodeJS.ErrnoException).code ?? 'error'}).`,
    );
  }
};

/** What cannot be helped by waiting becomes one line for the operator. */
const failureFor = (error: unknown, url: string, whatWasRefused: string): StartError | NotNow => {
  if (error instanceof Unreachable) return new NotNow(`no homeserver answers at ${url}: ${error.message}`, 0);
  if (isLimit(error)) return new NotNow(`the homeserver at ${url} limits logins`, askedPauseMs(error) ?? 0);
  if (error instanceof MatrixError && (error.statusCode === 401 || error.statusCode === 403))
    return new StartError(`${whatWasRefused} (${error.errcode}).`);
  if (error instanceof MatrixError)
    return new StartError(
      `MATRIX_HOMESERVER_URL: ${url} does not answer as a Matrix homeserver does (${error.statusCode} ${error.errcode}).`,
    );
  throw error;
};

const whoAmI = async (
  homeserver: Homeserver,
): Promise<{ readonly userId: string; readonly deviceId: string | null }> => {
  const answer = await homeserver.call({
    method: 'GET',
    path: '/_matrix/client/v3/account/whoami',
    patienceMs: START_PATIENCE_MS,
    timeoutMs: 15_000,
  });
  const userId = isRecord(answer) ? textAt(answer, 'user_id') : null;
  if (userId === null) throw new Unreachable('the answer names no user', true);
  return { userId, deviceId: isRecord(answer) ? textAt(answer, 'device_id') : null };
};

const passwordLogin = async (
  url: string,
  user: string,
  password: string,
  deviceId: string | null,
  stop: AbortSignal,
): Promise<Session> => {
  const body: Content = {
    type: 'm.login.password',
    identifier: { type: 'm.id.user', user },
    password,
    initial_device_display_name: 'Pierhand',
    // The same device again keeps its transactions and its keys.
    ...(deviceId === null ? {} : { device_id: deviceId }),
  };
  let answer: unknown;
  try {
    answer = await homeserverAt(url, null, stop).call({
      method: 'POST',
      path: '/_matrix/client/v3/login',
      body,
      patienceMs: 60_000,
      timeoutMs: 30_000,
    });
  } catch (error) {
    throw failureFor(error, url, `MATRIX_PASSWORD: the homeserver at ${url} refuses ${user} with this password`);
  }
  const accessToken = isRecord(answer) ? textAt(answer, 'access_token') : null;
  const userId = isRecord(answer) ? textAt(answer, 'user_id') : null;
  if (!isRecord(answer) || accessToken === null || userId === null)
    throw new StartError(`MATRIX_HOMESERVER_URL: ${url} does not answer a login as a Matrix homeserver does.`);
  return { accessToken, userId, deviceId: textAt(answer, 'device_id') };
};

/** Every homeserver has a list of versions, for anyone (Matrix specification, client-server API, "GET /_matrix/client/versions"). */
const findHomeserver = async (url: string, stop: AbortSignal): Promise<void> => {
  const notOne = `MATRIX_HOMESERVER_URL: ${url} does not answer as a Matrix homeserver does`;
  let answer: unknown;
  try {
    answer = await homeserverAt(url, null, stop).call({
      method: 'GET',
      path: '/_matrix/client/versions',
      patienceMs: START_PATIENCE_MS,
      timeoutMs: 15_000,
    });
  } catch (error) {
    throw failureFor(error, url, notOne);
  }
  if (!isRecord(answer) || !Array.isArray(answer['versions'])) throw new StartError(`${notOne}.`);
};

/**
 * A session that the homeserver has just confirmed.
 * @throws StartError one line naming the setting: no homeserver, token or password refused, session not writable; NotNow where the
 * homeserver is away or limits logins, or the disk takes nothing
 */
export const logIn = async (settings: MatrixSettings, dataFolder: string, stop: AbortSignal): Promise<Session> => {
  const { homeserverUrl: url, login } = settings;
  // First the server: a wrong address must not be taken for a wrong token. A login itself may have to wait for a rate limit.
  await findHomeserver(url, stop);
  if ('accessToken' in login) {
    try {
      return { accessToken: login.accessToken, ...(await whoAmI(homeserverAt(url, login.accessToken, stop))) };
    } catch (error) {
      throw failureFor(error, url, `MATRIX_ACCESS_TOKEN: the homeserver at ${url} does not accept this token`);
    }
  }
  const file = path.join(dataFolder, SESSION_FILE);
  const kept = await readKept(file, url, login.user);
  if (kept !== null) {
    try {
      await whoAmI(homeserverAt(url, kept.accessToken, stop));
      return kept;
    } catch (error) {
      // A token that was revoked is replaced; anything else is trouble to be told.
      if (!(error instanceof MatrixError && error.statusCode === 401))
        throw failureFor(error, url, `The homeserver at ${url} refuses the kept session`);
    }
  }
  // Else each attempt would leave another device behind.
  needWritable(dataFolder);
  const session = await passwordLogin(url, login.user, login.password, kept?.deviceId ?? null, stop);
  await keep(file, { ...session, homeserverUrl: url, user: login.user });
  return session;
};
