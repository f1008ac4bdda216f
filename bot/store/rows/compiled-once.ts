/** Statements that come with every question: their text is made once, not for each. */
import type { Compilable, CompiledQuery, Kysely, QueryResult } from 'kysely';
import type { Tables } from './tables.js';

export type Statement<Row> = (db: Kysely<Tables>, values: readonly unknown[]) => Promise<QueryResult<Row>>;

/** @param make the statement with any values; those given later take their places, in the order in which they stand in its text */
export const compiledOnce = <Row>(make: (db: Kysely<Tables>) => Compilable<Row>): Statement<Row> => {
  let kept: CompiledQuery<Row> | undefined;
  return (db, values) => {
    kept ??= make(db).compile();
    return db.executeQuery({ ...kept, parameters: values });
  };
};
