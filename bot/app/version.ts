/** Which Pierhand this is. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { projectRoot } from '../ground/project-root.js';

/** The commit that was built, put in by the builder; empty or left out where nobody knows it. */
declare const BUILT_FROM: string | undefined;

/** As package.json has it, and the commit where it is known: "0.1.0+185b827c" (build metadata of Semantic Versioning 2.0.0, item 10). */
export const ownVersion = (): string => {
  const { version } = JSON.parse(readFileSync(path.join(projectRoot(), 'package.json'), 'utf8')) as { version: string };
  const commit = typeof BUILT_FROM === 'string' ? BUILT_FROM : '';
  return commit === '' ? version : `${version}+${commit}`;
};
