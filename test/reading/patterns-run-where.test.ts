/** A pattern runs only where the words stand that it cannot do without; which those are is told by what the pattern matches itself. */
import { describe, expect, it } from 'vitest';
import { compilePattern, foldText, prepare } from '../../bot/reading/messages/compile-pattern.js';
import { placesBySearch } from '../../bot/reading/messages/word-places.js';

const found = (pattern: string, text: string): readonly string[] => {
  const folded = foldText(text);
  return compilePattern(pattern)
    .find(prepare(folded, (lower) => placesBySearch(lower)))
    .map(({ start, end }) => folded.slice(start, end));
};
const FAR = 'nothing of it here '.repeat(40);

describe('a pattern', () => {
  it('is found with and without a letter that may be missing', () => {
    const { needs } = compilePattern('\\b(?:per|via) (?:wlan|wi-?fi)\\b');
    expect([...needs].sort()).toEqual(['wi-fi', 'wifi', 'wlan']);
    for (const said of ['via WiFi', 'per wi-fi', 'per WLAN'])
      expect(found('\\b(?:per|via) (?:wlan|wi-?fi)\\b', `${FAR}${said} ${FAR}`)).toEqual([said]);
  });

  it('whose last letter may be missing still needs the letters before it', () => {
    expect(found('\\bdongles? gone', `${FAR}both dongles gone, one dongle gone`)).toEqual([
      'dongles gone',
      'dongle gone',
    ]);
  });

  it('of signs that no plain text has is found by those', () => {
    const pattern = 'garbled reply|[ÿþð]{3}|\\\\x(?:00|ff)';
    expect(compilePattern(pattern).needs).toContain('ÿ');
    expect(found(pattern, `${FAR}it answered ÿþÿ`)).toEqual(['ÿþÿ']);
    expect(found(pattern, `${FAR}read b"\\xff"`)).toEqual(['\\xff']);
    expect(found(pattern, `${FAR}a garbled reply`)).toEqual(['garbled reply']);
  });

  it('that may begin with any short word runs on all of the text', () => {
    expect(compilePattern('(?:no|or) \\d').needs).toEqual([]);
    expect(found('(?:no|or) \\d', `${FAR}no 7`)).toEqual(['no 7']);
  });
});
