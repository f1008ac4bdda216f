/** Statements that come with every question: their text is made once, not for each. */
import type { Compilable, CompiledQuery, Kysely } from 'kysely';
import type { Engine, Executed } from '../engines/engine.js';
import type { Tables } from './tables.js';

export type Statement<Row> = (engine: Engine, values: readonly unknown[]) => Promise<Executed<Row>>;

/** @param make the statement with any values; those given later take their places, in the order in which they stand in its text */
export const compiledOnce = <Row>(make: (db: Kysely<Tables>) => Compilable<Row>): Statement<Row> => {
  let kept: CompiledQuery<Row> | undefined;
  return async (engine, values) => {
    kept ??= await engine.run(async (db) => make(db).compile());
    return engine.execute({ ...kept, parameters: values });
  };
};
