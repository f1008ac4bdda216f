/** A process that plays the walks it is sent, one context and policy at a time. */
import { loadTriage } from '../../bot/triage/index.js';
import { playJob, type Job } from './simulate.js';

const [, , folder = 'knowledge/connection', overlay] = process.argv;
const model = loadTriage(folder, overlay);
process.on('message', (job) => {
  process.send?.(playJob(model, job as Job));
});
