import { findings } from '~/lib/findings';
import type { Finding } from '~/lib/findings/finding';
import type { FindingOptions } from '~/lib/findings/context';
import type { CaseRecord } from '~/lib/case/record';

export type Measured = Extract<Finding, { kind: 'measured' }>;

/** Findings of a record by id, for tests that look at some of them. */
export const found = (record: CaseRecord, options: FindingOptions = { seed: 1 }) =>
  listed(findings(record, options));

/** The same for a list of findings that was already made. */
export function listed(all: readonly Finding[]) {
  const byId = new Map(all.map((finding) => [finding.id, finding]));
  const get = (id: string): Finding => {
    const finding = byId.get(id);
    if (finding === undefined) throw new Error(`no finding ${id}; there are ${[...byId.keys()].join(', ')}`);
    return finding;
  };
  return {
    all,
    has: (id: string) => byId.has(id),
    get,
    measured: (id: string): Measured => {
      const finding = get(id);
      if (finding.kind !== 'measured')
        throw new Error(`${id} is ${finding.kind}: ${JSON.stringify(finding)}`);
      return finding;
    },
  };
}
