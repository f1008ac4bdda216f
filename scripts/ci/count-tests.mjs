// Adds up what the test suites wrote to .cache/results-*.json and closes with "N passed, N failed"; fails when any test did, or none ran.
import { readdirSync, readFileSync } from 'node:fs';

const totals = { passed: 0, failed: 0, skipped: 0 };
for (const name of readdirSync('.cache').filter((file) => /^results-.*\.json$/u.test(file))) {
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
    readFileSync(`.cache/${name}`, 'utf8'),
  );
  totals.passed += numPassedTests;
  // A file that failed before its first test counts too.
  totals.failed +=
    numFailedTests +
    testResults.filter(({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0).length;
  totals.skipped += numPendingTests + numTodoTests;
}
console.log(`${totals.passed} passed, ${totals.failed} failed, ${totals.skipped} skipped`);
process.exitCode = totals.failed > 0 || totals.passed === 0 ? 1 : 0;
