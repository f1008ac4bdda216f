/** `npm run faults:bench [-- ROUNDS [quiet] [held]]`: plays the bench and prints the figures, worst first; quiet: members never err; held: the draw held back, figures alone. */
import { realDeps } from '../commands/real-deps.js';
import { disagreements } from './disagreements.js';
import { offListJobs, pairJobs, singleJobs } from './jobs.js';
import { NO_NOISE, NOISE } from './member.js';
import { playJob, type Result } from './play.js';
import { figures, report } from './report.js';

const rounds = Number(process.argv[2] ?? '3');
const words = process.argv.slice(3);
const noise = words.includes('quiet') ? NO_NOISE : NOISE;
const draw = words.includes('held') ? 'held back' : 'tuned';
const deps = await realDeps();
const model = deps.triage();
const results: Result[] = [];
for (const job of [
  ...singleJobs(model, rounds, draw),
  ...pairJobs(model, 20 * rounds, draw),
  ...offListJobs(model, 2 * rounds, draw),
])
  results.push(await playJob(deps, job, { noise }));
console.log(`The draw ${draw}, ${rounds} rounds`);
const lines = draw === 'tuned' ? [...report(results), '', ...disagreements(model, 40)] : figures(results);
for (const line of lines) console.log(line);
