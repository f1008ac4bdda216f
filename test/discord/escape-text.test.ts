import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeWithin, plainWithin } from '../../bot/platforms/discord/write/escape-text.js';

const escaped = (text: string) => escapeWithin(text, 4000);

/** As Discord reads mark-up: a backslash before punctuation makes it literal (developer documentation, "Message Formatting"; rule from memory). */
const unescaped = (text: string): string => text.replace(/\\([^\p{L}\p{N}\s])/gu, '$1');
const active = (text: string): string => text.replace(/\\[^\p{L}\p{N}\s]/gu, '·');

describe('nothing a member types becomes a mention, a link or mark-up', () => {
  it.each([
    ['@everyone look', /@/u],
    ['<@123456789012345678>', /[<>@]/u],
    ['<@&123456789012345678> <#123456789012345678>', /[<>@]/u],
    ['https://example.org/a_b', /https?:/u],
    ['HTTP://EXAMPLE.ORG', /https?:/iu],
    ['discord://-/x', /discord:/u],
    ['[click](https://example.org)', /[[\]]/u],
    ['**bold** _it_ ~~no~~ `code` ||secret||', /[*_~`|]/u],
    ['> quote\n>>> more', />/u],
    ['# heading\n  ## two\n- item\n-# small', /^\s*[#-]/mu],
    ['1. one\n2) two', /^\d+[.)]/mu],
    ['back\\slash', /\\/u],
    ['<t:1700000000:R> <:moon:1234>', /[<>]/u],
  ])('%s', (text, dangerous) => {
    expect(active(escaped(text))).not.toMatch(dangerous);
    expect(unescaped(escaped(text))).toBe(text);
  });

  it('is read back as it was typed, whatever was typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'\\`*_~|<>@[]#-+1. \nhttps:/ab)é', '\u{1F319}') }), (text) => {
        expect(unescaped(escaped(text))).toBe(text);
      }),
    );
  });

  it('is cut without leaving a lone backslash or half a character, never over the limit', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('*', '\\', 'a', '\u{1F319}', '\n', '#') }),
        fc.integer({ min: 1, max: 40 }),
        (text, limit) => {
          const cut = escapeWithin(text, limit);
          expect(cut.length).toBeLessThanOrEqual(limit);
          expect(active(cut)).not.toContain('\\');
          expect(cut).not.toMatch(/\p{Surrogate}/u);
          expect(text.startsWith(unescaped(cut).replace(/…$/u, ''))).toBe(true);
          expect(plainWithin(text, limit)).not.toMatch(/\p{Surrogate}/u);
        },
      ),
    );
  });

  it('leaves everyday answers as they are', () => {
    expect(escaped('Up, best at 23:40 GMT, 62° high (south-south-east, 157°). RA 22h 37m 04s, −05° 22′')).toBe(
      'Up, best at 23:40 GMT, 62° high (south-south-east, 157°). RA 22h 37m 04s, −05° 22′',
    );
  });
});
