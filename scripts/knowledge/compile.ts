/** Part of the build: the shipped fault model as one file in dist/, so that a start need not read and check its YAML. */
import path from 'node:path';
import { projectRoot } from '../../bot/ground/project-root.js';
import { compiledModelFile } from '../../bot/app/compiled-model.js';
import { compileEntries } from '../../bot/triage/model/compiled-entries.js';

compileEntries(path.join(projectRoot(), 'knowledge/connection'), compiledModelFile());
