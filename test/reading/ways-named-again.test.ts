/** A text may name a way to the mount again and again; what is done for each must not grow with how often. Checked by counting, not by time. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../bot/reading/finding.js';
import { otherWays } from '../../bot/reading/one-way.js';

const TEXT = 'by usb it works fine. over bluetooth nothing, it fails. ';

const findings = (times: number): readonly Finding[] =>
  Array.from({ length: times }, (_, i) => i * TEXT.length).flatMap((from) =>
    ['usb', 'bluetooth'].map((path): Finding => {
      const start = from + TEXT.indexOf(path);
      const entry = { id: path, path } as Finding['entry'];
      return { entry, sureness: 0.85, span: { start, end: start + path.length }, by: 'words' };
    }),
  );

const told = (times: number): { readonly aside: readonly string[]; readonly compared: number } => {
  let compared = 0;
  const agree = (a: string, b: string): boolean => {
    compared += 1;
    return a === b;
  };
  const aside = otherWays(findings(times), TEXT.repeat(times), agree);
  return { aside: [...aside].map(({ entry }) => entry.path ?? ''), compared };
};

describe('ways named again and again', () => {
  it('leave the one that does well aside, each time it is named', () => {
    expect(told(1).aside).toEqual(['usb']);
    expect(told(10).aside).toEqual(Array.from({ length: 10 }, () => 'usb'));
  });

  it('are compared as the few ways that they are', () => {
    expect(told(40).compared).toBeLessThanOrEqual(8);
  });

  it('more often than anybody would, tell of none', () => {
    expect(told(400)).toEqual({ aside: [], compared: 0 });
  });
});
