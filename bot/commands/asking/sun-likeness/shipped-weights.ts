/** The weights by which lines near the Sun are known, read when first asked for; scripts/reading/fit-sun.ts makes them. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { once } from '../../../ground/once.js';
import { projectRoot } from '../../../ground/project-root.js';
import { decodeWeights } from '../../../reading/index.js';

export const SUN_WEIGHTS = path.join('knowledge', 'sun.bin');

export const sunWeights = once(() => decodeWeights(readFileSync(path.join(projectRoot(), SUN_WEIGHTS))));
