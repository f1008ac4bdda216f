/** Every context a model can be walked in, each fully known. */
import type { WalkContext } from '../../bot/triage/model/context.js';
import type { TriageModel } from '../../bot/triage/model/model.js';

const PHONE_PATHS: ReadonlySet<string> = new Set(['bluetooth', 'bridge-own-network', 'bridge-house-network']);

export type FullContext = WalkContext & { readonly path: string };

export const contextsOf = (model: Pick<TriageModel, 'paths'>): readonly FullContext[] =>
  model.paths.flatMap((path) =>
    path.systems.flatMap((system) => path.clients.map((client) => ({ path: path.id, system, client }))),
  );

/** A phone reaches the mount by radio; simulations leave it out, since it is what computers have and less. */
export const phoneContextsOf = (model: Pick<TriageModel, 'paths'>): readonly FullContext[] =>
  model.paths
    .filter(({ id, like = id }) => PHONE_PATHS.has(like))
    .map((path) => ({ path: path.id, system: 'phone', client: 'direct' }));
