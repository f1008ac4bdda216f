import { afterAll, beforeAll, describe } from 'vitest';
import { openStore } from '../../bot/store/open-store.js';
import { postgresMissing, startCluster, type Cluster } from './postgres-cluster.js';
import { storeSuite } from './store-suite.js';

const missing = postgresMissing();

describe.skipIf(missing !== null)(
  `the store over PostgreSQL${missing === null ? '' : ` (skipped: ${missing})`}`,
  () => {
    let cluster: Cluster;
    let made = 0;
    beforeAll(async () => {
      cluster = await startCluster();
    }, 60_000);
    afterAll(() => cluster.stop(), 60_000);

    storeSuite(async () => {
      const name = `store_${++made}`;
      const databaseUrl = await cluster.database(name);
      return {
        store: await openStore({ databaseUrl }),
        bench: {
          another: () => openStore({ databaseUrl }),
          dump: async () => {
            const tables = await cluster.query(
              `select table_name from information_schema.tables where table_schema = 'public'`,
              name,
            );
            return JSON.stringify(
              await Promise.all(
                tables.map(async ({ table_name: table }) => [
                  table,
                  await cluster.query(`select * from "${table as string}"`, name),
                ]),
              ),
            );
          },
          done: async () => undefined,
        },
      };
    });
  },
);
