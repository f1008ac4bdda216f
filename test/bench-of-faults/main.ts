/** `npm run faults:bench [-- ROUNDS]`: plays the bench and prints the figures, worst first. */
import { realDeps } from '../commands/real-deps.js';
import { disagreements } from './disagreements.js';
import { offListJobs, pairJobs, singleJobs } from './jobs.js';
import { playJob, type Result } from './play.js';
import { report } from './report.js';

const rounds = Number(process.argv[2] ?? '3');
const deps = await realDeps();
const model = deps.triage();
const results: Result[] = [];
for (const job of [...singleJobs(model, rounds), ...pairJobs(model, 20 * rounds), ...offListJobs(model, rounds)])
  results.push(await playJob(deps, job));
for (const line of [...report(results), '', ...disagreements(model, 40)]) console.log(line);
