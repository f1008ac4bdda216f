/** The catalogue, gazetteer and fault model that ship with the bot, each read once a process: reading them costs more than most tests. */
import path from 'node:path';
import { compiledModelFile } from '../bot/app/compiled-model.js';
import { loadCatalogue, type Catalogue } from '../bot/catalogue/index.js';
import { projectRoot } from '../bot/ground/project-root.js';
import { loadPlaces, type Places } from '../bot/places/index.js';
import { loadTriage, type TriageModel } from '../bot/triage/index.js';

const knowledge = path.join(projectRoot(), 'knowledge');

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

export const shippedCatalogue: () => Catalogue = once(() => loadCatalogue(path.join(knowledge, 'catalogue')));
export const shippedPlaces: () => Places = once(() => loadPlaces(path.join(knowledge, 'places')));
export const shippedModel: () => TriageModel = once(() =>
  loadTriage(path.join(knowledge, 'connection'), undefined, compiledModelFile()),
);
