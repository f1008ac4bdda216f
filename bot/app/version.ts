/** Which Pierhand this is. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { projectRoot } from '../ground/project-root.js';

/** As package.json has it, such as "0.1.0". */
export const ownVersion = (): string => {
  const { version } = JSON.parse(readFileSync(path.join(projectRoot(), 'package.json'), 'utf8')) as { version: string };
  return version;
};
