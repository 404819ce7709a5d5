import { loadDemo } from '../../fixtures/demo/load';
import { caseFindings } from '~/app/findings/case-findings.server';
import { caseHead, listCases, readCase } from '~/db/cases';
import { dataDir, openDatabase } from '~/db/open';

/** Creates the database when it is not there, brings it up to date, and loads the demo case once. */
export async function prepareData(withDemo: boolean): Promise<void> {
  const folder = dataDir();
  const db = openDatabase(folder);
  try {
    if (!withDemo) return;
    const before = listCases(db).length;
    const caseId = await loadDemo(db, folder);
    const record = readCase(db, caseId);
    const head = caseHead(db, caseId);
    // What its outlines give is kept now, so that the first page opened does not wait for it.
    if (listCases(db).length > before && record && head) caseFindings({ db, caseId, record, head });
  } finally {
    db.$client.close();
  }
}
