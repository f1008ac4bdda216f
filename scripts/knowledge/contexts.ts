/** Every context a model can be walked in, each fully known. */
import type { WalkContext } from '../../bot/triage/model/context.js';
import type { TriageModel } from '../../bot/triage/model/model.js';

export type FullContext = WalkContext & { readonly path: string };

export const contextsOf = (model: Pick<TriageModel, 'paths'>): readonly FullContext[] =>
  model.paths.flatMap((path) =>
    path.systems.flatMap((system) => path.clients.map((client) => ({ path: path.id, system, client }))),
  );
