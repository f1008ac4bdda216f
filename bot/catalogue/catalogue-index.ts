export type CatalogueIndex = unknown;
