/** `npm run faults:bench [-- ROUNDS [quiet]]`: plays the bench and prints the figures, worst first; quiet: members never err. */
import { realDeps } from '../commands/real-deps.js';
import { disagreements } from './disagreements.js';
import { offListJobs, pairJobs, singleJobs } from './jobs.js';
import { NO_NOISE, NOISE } from './member.js';
import { playJob, type Result } from './play.js';
import { report } from './report.js';

const rounds = Number(process.argv[2] ?? '3');
const noise = process.argv[3] === 'quiet' ? NO_NOISE : NOISE;
const deps = await realDeps();
const model = deps.triage();
const results: Result[] = [];
for (const job of [...singleJobs(model, rounds), ...pairJobs(model, 20 * rounds), ...offListJobs(model, rounds)])
  results.push(await playJob(deps, job, { noise }));
for (const line of [...report(results), '', ...disagreements(model, 40)]) console.log(line);
