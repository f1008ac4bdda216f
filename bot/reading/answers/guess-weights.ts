/** Made by `npx tsx scripts/reading/fit-answers.ts --write` from the phrases of knowledge/connection/reading/answers. */
import type { Linear } from './guess-answer.js';

/** Which answer is nearest, and whether the nearest is meant. */
export const GUESS_WEIGHTS: { readonly which: Linear; readonly whether: Linear } = {
  which: {
    mean: [0.1913, -2.2523, 0.1344, -0.2527, 0.0245, -0.0747, 0.1562, -0.2561, 0.0822, 0.0309, 0.7354],
    deviation: [0.2811, 2.8883, 0.1982, 0.3528, 0.0884, 0.1881, 0.2038, 0.3454, 0.2747, 0.1731, 0.3354],
    weights: [-0.3399, 1.0527, 0.4055, -0.1168, -0.1231, 0.0293, 1.1357, -0.6702, 0.1363, 0.0453, 0.3313],
    bias: 0,
  },
  whether: {
    mean: [0.598, 0.361, 0.2538, 0.0419, 0.2615, 0.3102, 1.0864, 0.2423, 0.0926, 0.6388, 1.2757],
    deviation: [0.2298, 0.3158, 0.2538, 0.122, 0.2506, 0.3929, 0.3191, 0.4285, 0.2898, 0.4803, 0.602],
    weights: [0.6003, 0.2026, 0.2206, 0.0344, 0.249, 0.1568, -0.3686, 0.1307, 0.0371, -0.0076, 0.3863],
    bias: -0.2992,
  },
};
