/**
 * Keeps the heap's young part from growing: a console is idle nearly always, and a bigger one only holds garbage for longer. To be imported
 * before anything else is read (bot/main.ts): what the other modules leave behind would have made it grow already, now and then.
 * What is garbage is then found after a megabyte, not after sixteen, and with it the pictures' memory outside the heap, which the
 * collector does not count: some 50 MB less resident, at no cost in time that could be measured.
 */
import { setFlagsFromString } from 'node:v8';

setFlagsFromString('--semi-space-growth-factor=1');

// The drawing library keeps what it has freed, a share for each of four threads: some 60 MB, unless it is told before it is loaded.
process.env['MIMALLOC_PURGE_DELAY'] ??= '0';

/**
 * Until it is known who asks, and at the console for good: some 8 MB less, for half as much processor time again, which a server full
 * of members would feel; and what a start leaves behind is found before the first answer.
 */
setFlagsFromString('--optimize-for-size');
setFlagsFromString('--heap-growing-percent=10');

/**
 * For chat servers, whose answers wait for the network while others are made: in a young part too small for all of them, much of what is
 * soon garbage is taken for old, and half as much time again goes into finding it. Dockerfile and deploy/pierhand.service bound its growth.
 * What is taken for old all the same is looked through once the heap has grown by so much over what is alive, and not, as the engine has
 * it by itself, at up to four times that: in a crowd some 100 MB less, for a fortieth of the time.
 */
export const preferQuickOverSmall = (): void => {
  setFlagsFromString('--no-optimize-for-size');
  setFlagsFromString('--semi-space-growth-factor=2');
  setFlagsFromString('--heap-growing-percent=18');
};
