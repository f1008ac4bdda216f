/** Whether what is kept about members crosses a network unencrypted on its way to PostgreSQL. Looks at the address alone. */

const HERE = new Set(['', 'localhost', '127.0.0.1', '[::1]', '::1']);
const ENCRYPTED = new Set(['require', 'verify-ca', 'verify-full', 'no-verify']);

/** True for a server on another machine where the address does not ask for TLS (`sslmode=require` or stricter, or `ssl=true`). */
export const isUnencrypted = (databaseUrl: string): boolean => {
  if (!URL.canParse(databaseUrl)) return false;
  const { hostname, searchParams } = new URL(databaseUrl);
  const host = searchParams.get('host') ?? hostname;
  if (HERE.has(host) || host.startsWith('/') || host.startsWith('%2F')) return false;
  return !ENCRYPTED.has(searchParams.get('sslmode') ?? '') && searchParams.get('ssl') !== 'true';
};
