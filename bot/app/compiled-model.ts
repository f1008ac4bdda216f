import path from 'node:path';
import { projectRoot } from '../ground/project-root.js';

/** Where the build leaves the shipped fault model; the program runs as well without it. */
export const compiledModelFile = (): string => path.join(projectRoot(), 'dist/knowledge/connection.json');
