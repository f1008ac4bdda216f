/** Keeps the heap's young part from growing: a bot is idle nearly always, and a bigger one only holds garbage for longer. */
import { setFlagsFromString } from 'node:v8';

/**
 * To be called first. What is garbage is then found after a megabyte, not after sixteen, and with it the pictures' memory
 * outside the heap, which the collector does not count: some 50 MB less resident, at no cost in time that could be measured.
 */
export const keepHeapSmall = (): void => setFlagsFromString('--semi-space-growth-factor=1');
