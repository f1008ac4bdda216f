/** A place to stand for what is the same from everywhere. */
import type { Observer } from './types.js';

/** The Moon's lit part differs by less than a hundredth from place to place, and it stands at most an Earth's radius nearer or farther. */
export const ANYWHERE: Observer = { latitudeDeg: 0, longitudeDeg: 0, elevationM: 0 };
