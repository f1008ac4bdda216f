import { describe, expect, it } from 'vitest';
import { labelPicked } from '../../bot/platforms/shared/label-picked.js';

describe('a line that is one of the answers beside a walk', () => {
  const choices = [
    { label: 'Dark', run: 'triage walk:k2 answer:power-light.off' },
    { label: 'Lit and steady', run: 'triage walk:k2 answer:power-light.steady' },
    { label: 'Accept', run: 'triage walk:k2 do:accept' },
    { label: 'Why this?', run: 'triage walk:k2 do:why' },
  ];

  it('is that answer word for word, though a command bears the name', () => {
    expect(labelPicked('dark', choices)).toBe('triage walk:k2 answer:power-light.off');
  });

  it('is left to the walk where it says more, and consent to a press', () => {
    expect(labelPicked('dark tonight', choices)).toBeNull();
    expect(labelPicked('steady and lit', choices)).toBeNull();
    expect(labelPicked('accept', choices)).toBeNull();
    expect(labelPicked('why this', choices)).toBe('triage walk:k2 do:why');
  });

  it('is none where no walk stands', () => {
    expect(labelPicked('dark', [{ label: 'Dark', run: 'dark' }])).toBeNull();
  });
});
