/** For reviewers of the fault model: `npm run knowledge -- check | tree PATH | simulate [--json]`. */
import { problemLine } from '../../bot/triage/knowledge-problem.js';
import { readEntries } from '../../bot/triage/read-entries.js';
import { checkReferences } from '../../bot/triage/check-references.js';

const FOLDER = 'knowledge/connection';
const [, , task] = process.argv;
if (task !== 'check') {
  console.error('usage: npm run knowledge -- check');
  process.exit(2);
}
const result = readEntries(FOLDER);
const problems = [...result.problems, ...checkReferences(result)];
for (const problem of problems) console.error(problemLine(problem));
const { faults, checks, evidence, paths } = result.entries;
console.log(`${paths.length} paths, ${faults.length} faults, ${checks.length} checks, ${evidence.length} evidence patterns; ${problems.length} problems`);
process.exitCode = problems.length === 0 ? 0 : 1;
