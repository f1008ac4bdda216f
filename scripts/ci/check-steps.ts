/** What `npm run check` runs for the files that changed. */

interface Step {
  readonly name: string;
  /** In node_modules/.bin. */
  readonly program: string;
  readonly args: readonly string[];
}

const isScript = (file: string): boolean => /\.(?:ts|js|mjs)$/u.test(file);
const stem = (file: string): string => file.split('/').at(-1)?.split('.')[0] ?? '';

/**
 * A step for which no file changed is left out.
 * @param changed files, from the project's root
 * @param allTests every test file there is
 */
export const stepsFor = (changed: readonly string[], allTests: readonly string[]): readonly Step[] => {
  const scripts = changed.filter(isScript);
  const hasKnowledge = changed.some((file) => file.startsWith('knowledge/connection/'));
  // A source's own test has its name; an `index` has none.
  const stems = new Set(scripts.map(stem).filter((name) => name !== 'index'));
  const tests = allTests.filter((file) => changed.includes(file) || stems.has(stem(file)));
  const asked = [
    ...(scripts.length > 0 ? ['test/structure'] : []),
    ...(hasKnowledge ? ['test/knowledge'] : []),
    ...tests,
  ];
  return [
    { name: 'layout', program: 'prettier', args: ['--check', '--ignore-unknown', ...changed], files: changed },
    {
      name: 'lint',
      program: 'eslint',
      args: ['--cache', '--cache-location', '.cache/eslint/', ...scripts],
      files: scripts,
    },
    {
      name: 'types',
      program: 'tsc',
      args: ['--noEmit', '--incremental', '--tsBuildInfoFile', '.cache/check.tsbuildinfo'],
      files: scripts,
    },
    {
      name: 'knowledge',
      program: 'tsx',
      args: ['scripts/knowledge/main.ts', 'check'],
      files: hasKnowledge ? changed : [],
    },
    { name: 'tests', program: 'vitest', args: ['run', ...asked], files: asked },
  ].filter(({ files }) => files.length > 0);
};
