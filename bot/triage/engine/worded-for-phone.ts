/** What is written for one at a computer, as it reads to one who holds a phone or tablet. */

const reworded = (text: string): string =>
  text.replace(/\b(the|this|your|same) computer\b/giu, (_, own: string) => `${own} phone`);

const within = (value: unknown): unknown => {
  if (typeof value === 'string') return reworded(value);
  if (Array.isArray(value)) return value.map(within);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, within(part)]));
};

/** An entry with every sentence in it reworded; ids hold no such words. */
export const wordedForPhone = <T>(entry: T): T => within(entry) as T;
