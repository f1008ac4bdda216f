// npm run check: what a change can be held to in a minute or two, by the files that differ from where the branch began (or from the last
// commit, on main). The whole of it is .ci/run.
import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { stepsFor } from './check-steps.js';

const git = (...args: readonly string[]): string | null => {
  const { status, stdout } = spawnSync('git', [...args], { encoding: 'utf8' });
  return status === 0 ? stdout.trim() : null;
};
const linesOf = (text: string | null): readonly string[] => (text ?? '').split('\n').filter((line) => line !== '');

const branchedAt = (): string => {
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
const allTests = linesOf(git('ls-files', '--cached', '--others', '--exclude-standard', 'test')).filter((file) =>
  file.endsWith('.test.ts'),
);

process.stdout.write(`${changed.length} files changed\n`);
for (const { name, program, args } of stepsFor(changed, allTests)) {
  const beganMs = performance.now();
  const { status } = spawnSync(`node_modules/.bin/${program}`, [...args], { stdio: 'inherit', shell: false });
  const seconds = Math.round((performance.now() - beganMs) / 1000);
  process.stdout.write(`-- ${name}: ${status === 0 ? 'good' : 'FAILED'}, ${seconds} s\n`);
  if (status !== 0) process.exitCode = 1;
}
