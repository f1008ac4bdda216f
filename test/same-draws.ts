/**
 * What chance draws is the same in every ordinary run, so that a change is judged by itself and not by its luck. New draws are
 * looked for with `npm run test:fuzz`, or with `FUZZ_SEED=any` beside any test; `FUZZ_SEED=NUMBER` repeats one.
 */
import fc from 'fast-check';

const given = process.env['FUZZ_SEED'];
const isNew = given === 'any' || (given === undefined && process.env['FUZZ'] === 'full');

if (!isNew) fc.configureGlobal({ seed: Number(given ?? 20_261_127) });
