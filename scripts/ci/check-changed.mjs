// npm run check: what a change can be held to in a minute or two: layout, lint and tests of the files that differ from where the branch
// began (or from the last commit, on main), and the types of all. The whole of it is .ci/run.
import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';

const git = (...args) => {
  const { status, stdout } = spawnSync('git', args, { encoding: 'utf8' });
  return status === 0 ? stdout.trim() : null;
};
const linesOf = (text) => (text ?? '').split('\n').filter((line) => line !== '');

const branchedAt = () => {
  for (const from of ['@{upstream}', 'origin/main', 'main']) {
    const base = git('merge-base', 'HEAD', from);
    if (base !== null) return base;
  }
  return 'HEAD';
};

const changed = [
  ...new Set([
    ...linesOf(git('diff', '--name-only', '--diff-filter=ACMR', branchedAt())),
    ...linesOf(git('ls-files', '--others', '--exclude-standard')),
  ]),
];
const scripts = changed.filter((file) => /\.(?:ts|js|mjs)$/u.test(file));
const tests = changed.filter((file) => /^test\/.*\.test\.ts$/u.test(file));

const steps = [
  ['layout', 'prettier', ['--check', '--ignore-unknown', ...changed], changed],
  ['lint', 'eslint', ['--cache', '--cache-location', '.cache/eslint/', ...scripts], scripts],
  ['types', 'tsc', ['--noEmit', '--incremental', '--tsBuildInfoFile', '.cache/check.tsbuildinfo'], scripts],
  ['tests', 'vitest', ['run', 'test/structure', ...tests], scripts],
];

process.stdout.write(`${changed.length} files changed, ${tests.length} of them tests\n`);
for (const [name, program, args, files] of steps) {
  if (files.length === 0) continue;
  const beganMs = performance.now();
  const { status } = spawnSync(`node_modules/.bin/${program}`, args, { stdio: 'inherit', shell: false });
  const seconds = Math.round((performance.now() - beganMs) / 1000);
  process.stdout.write(`-- ${name}: ${status === 0 ? 'good' : 'FAILED'}, ${seconds} s\n`);
  if (status !== 0) process.exitCode = 1;
}
