/** One entry of the vocabulary met in a text: what it tells, how surely, and where. */
import type { Span } from './messages/compile-pattern.js';
import type { ReadBy } from './reading.js';
import type { Told } from './schema.js';

export interface Finding {
  readonly entry: Told & { readonly says?: string | undefined; readonly label?: string | undefined };
  /** 0 to 1. */
  readonly sureness: number;
  /** In the folded text. */
  readonly span: Span;
  readonly by: ReadBy;
}
