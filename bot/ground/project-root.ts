/** Where the project's own folders (knowledge, deploy) lie, whether run from source or from dist/. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The nearest folder above this file that holds both package.json and knowledge/. Throws if there is none. */
export const projectRoot = (): string => {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  for (;;) {
    if (existsSync(path.join(folder, 'package.json')) && existsSync(path.join(folder, 'knowledge'))) return folder;
    const parent = path.dirname(folder);
    if (parent === folder)
      throw new Error('Pierhand cannot find its knowledge folder; it should lie beside package.json.');
    folder = parent;
  }
};
