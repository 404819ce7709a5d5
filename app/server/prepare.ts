import { loadDemo } from '../../fixtures/demo/load';
import { dataDir, openDatabase } from '~/db/open';

/** Creates the database when it is not there, brings it up to date, and loads the demo case once. */
export async function prepareData(withDemo: boolean): Promise<void> {
  const folder = dataDir();
  const db = openDatabase(folder);
  try {
    if (withDemo) await loadDemo(db, folder);
  } finally {
    db.$client.close();
  }
}
