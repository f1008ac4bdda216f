/** When an operator is told that the database is reached in the clear. sslmode: "SSL Support" in PostgreSQL's documentation of libpq. */
import { expect, it } from 'vitest';
import { isUnencrypted } from '../../bot/store/database-tls.js';

it.each([
  ['postgres://pier:x@db.fenwold.example/pierhand', true],
  ['postgres://pier:x@db.fenwold.example/pierhand?sslmode=prefer', true],
  ['postgres://pier:x@10.0.0.7/pierhand?sslmode=disable', true],
  ['postgres://pier:x@db.fenwold.example/pierhand?sslmode=require', false],
  ['postgres://pier:x@db.fenwold.example/pierhand?sslmode=verify-full', false],
  ['postgres://pier:x@localhost/pierhand', false],
  ['postgres://pier:x@[::1]:5432/pierhand', false],
  ['postgres:///pierhand?host=/run/postgresql', false],
  ['not an address', false],
])('%s', (address, said) => {
  expect(isUnencrypted(address)).toBe(said);
});
