/** What the catalogue asks of whoever keeps the comets and minor planets: they come and go, so they are in no file of ours. */
import type { Target, TargetCompletion } from './target.js';

export interface MovingTargets {
  /** 'not-set': the operator gave no list; 'not-read': it has not been read (yet); 'read': there is one. */
  readonly state: () => 'not-set' | 'not-read' | 'read';
  /** Those that a text names, brightest first; empty where it names none. */
  readonly find: (text: string) => readonly Target[];
  /** The comets of the list, brightest first by prediction. */
  readonly comets: (limit: number) => readonly Target[];
  /** How old the list is and what its magnitudes are worth, in a sentence. */
  readonly noteOn: (target: Target) => string;
  /** Names that begin so, brightest first. */
  readonly complete: (partial: string, limit: number) => readonly TargetCompletion[];
}
