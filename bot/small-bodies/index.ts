/** Comets and minor planets: the door. */
export { keepElements, type ElementsKeeper } from './keep-elements.js';
