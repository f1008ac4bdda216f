/** When an operator is told that the database is reached in the clear. sslmode: "SSL Support" in PostgreSQL's documentation of libpq. */
import { expect, it } from 'vitest';
import { StartError } from '../../bot/ground/start-error.js';
import { driverAddress, isUnencrypted } from '../../bot/store/database-tls.js';

it.each([
  ['postgres://pier:x@db.fenwold.example/pierhand', true],
  ['postgres://pier:x@db.fenwold.example/pierhand?sslmode=prefer', true],
  ['postgres://pier:x@10.0.0.7/pierhand?sslmode=disable', true],
  ['postgres://pier:x@db.fenwold.example/pierhand?sslmode=require', false],
  ['postgres://pier:x@db.fenwold.example/pierhand?sslmode=verify-full', false],
  ['postgres://pier:x@db.fenwold.example/pierhand?ssl=true', false],
  ['postgres://pier:x@localhost/pierhand', false],
  ['postgres://pier:x@[::1]:5432/pierhand', false],
  ['postgres:///pierhand?host=/run/postgresql', false],
  ['not an address', false],
])('%s', (address, said) => {
  expect(isUnencrypted(address)).toBe(said);
});

const DB = 'postgres://pier:x@db.fenwold.example/pierhand';
const read = (file: string): string => {
  if (file !== '/etc/pierhand/ca.pem') throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
  return 'CA';
};

// libpq, table "SSL Mode Descriptions", and the note that `require` with a root certificate is `verify-ca`.
it.each<[string, unknown]>([
  ['', false],
  ['?sslmode=disable', false],
  ['?sslmode=require', { rejectUnauthorized: false }],
  ['?ssl=true', { rejectUnauthorized: false }],
  [
    '?sslmode=require&sslrootcert=/etc/pierhand/ca.pem',
    { ca: 'CA', checkServerIdentity: expect.any(Function) as unknown },
  ],
  [
    '?sslmode=verify-ca&sslrootcert=/etc/pierhand/ca.pem',
    { ca: 'CA', checkServerIdentity: expect.any(Function) as unknown },
  ],
  ['?sslmode=verify-full&sslrootcert=/etc/pierhand/ca.pem', { ca: 'CA' }],
  ['?sslmode=verify-full&sslrootcert=system', {}],
])('%s is read as libpq reads it', (query, ssl) => {
  expect(driverAddress(`${DB}${query}&application_name=x`.replace(/e\/pierhand&/u, 'e/pierhand?'), read)).toEqual({
    connectionString: `${DB}?application_name=x`,
    ssl,
  });
});

it.each([
  ['?sslmode=no-verify', 'sslmode must be one of disable, require, verify-ca, verify-full'],
  ['?sslmode=prefer', 'sslmode must be one of'],
  ['?sslmode=verify-ca', 'needs sslrootcert=FILE'],
  ['?uselibpqcompat=true&sslmode=require', 'take uselibpqcompat out'],
  ['?sslmode=verify-full&sslrootcert=/nowhere.pem', '/nowhere.pem, which cannot be read (ENOENT)'],
])('%s is one line for the operator, without the password', (query, says) => {
  const refused = (): unknown => driverAddress(`${DB.replace(':x@', ':hushhush@')}${query}`, read);
  expect(refused).toThrow(StartError);
  expect(refused).toThrow(says);
  expect(refused).not.toThrow(/hushhush|\n/u);
});
