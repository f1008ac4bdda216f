/** Made by `npx tsx scripts/reading/fit-answers.ts --write` from the phrases of knowledge/connection/reading/answers. */
import type { Linear } from './linear.js';

/** Which answer is nearest, and whether the nearest is meant. */
export const GUESS_WEIGHTS: { readonly which: Linear; readonly whether: Linear } = {
  which: {
    mean: [0.1825, -2.777, 0.1537, -0.2934, 0.0352, -0.1192, 0.1683, -0.2923, 0.0912, 0.0309, 0.7244],
    deviation: [0.2995, 3.2339, 0.2057, 0.3684, 0.1052, 0.2274, 0.2115, 0.3639, 0.2879, 0.1731, 0.3347],
    weights: [-0.234, 0.8811, 0.958, -0.5155, 0.3828, -0.3697, 1.142, -0.6539, 0.123, 0.0499, 0.3056],
    bias: 0,
  },
  whether: {
    mean: [0.6378, 0.4145, 0.2909, 0.0701, 0.2862, 0.3512, 1.1314, 0.2616, 0.1205, 0.5882, 1.2982, 0.317],
    deviation: [0.2333, 0.3386, 0.2618, 0.1535, 0.2648, 0.4106, 0.3373, 0.4395, 0.3255, 0.4922, 0.6131, 2.2266],
    weights: [0.594, 0.3491, -0.0265, 0.1288, 0.2021, -0.3163, -0.3542, 0.2677, 0.0712, 0.0775, 0.5699, 0.771],
    bias: -0.2456,
  },
};
