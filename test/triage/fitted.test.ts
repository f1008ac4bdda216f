/** Texts in a place too small for them: cut where a reader pauses. */
import { describe, expect, it } from 'vitest';
import { fitted, wordsWithin } from '../../bot/commands/triage/fitted.js';
import { readWords } from '../../bot/commands/triage/read-notes.js';
import { loadTriage, startWalk, tellText } from '../../bot/triage/index.js';

const model = loadTriage('knowledge/connection');

describe('a text in its place', () => {
  it.each([
    ['Windows will not open the port; most often something else has it open', 60, 'Windows will not open the port'],
    ['It connects by its address; only the search finds nothing', 48, 'It connects by its address'],
    ['The newer of two protocols and an old mount', 30, 'The newer of two protocols…'],
    ['Short', 30, 'Short'],
    ['Pneumonoultramicroscopic', 10, 'Pneumonou…'],
    ['', 10, ''],
  ])('"%s" in %i', (text, limit, shown) => {
    expect(fitted(text, limit)).toBe(shown);
  });
  it('shows that words of a member go on', () => {
    expect(wordsWithin('it worked, then the light went out at once', 26)).toBe('it worked, then the light…');
  });
  it('never ends within a word, for all that a message may be said to mean', () => {
    for (const { says } of model.evidence) {
      const { read } = tellText(model, startWalk({ member: 'Odalys', helper: null }), '', 'member');
      const fact = { what: 'message', answer: 'denied', sureness: 1, quote: '', by: 'log' } as const;
      const notes = readWords(model, { ...read, understood: [{ fact, label: says ?? 'Nothing' }] });
      const taken = /^I take it: (.*?)…?\.$/u.exec(notes.find((note) => note.startsWith('I take it')) ?? '')?.[1] ?? '';
      expect(` ${says?.toLowerCase() ?? 'nothing'} `).toMatch(
        new RegExp(`^ ${taken.toLowerCase().replaceAll(/[^\w ]/gu, '.')}[\\s;:,.]`, 'u'),
      );
    }
  });
});
