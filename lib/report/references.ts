import type { CaseRecord } from '../case/record';
import type { Finding, Method } from '../findings/finding';
import type { Ref } from '../explanations/witness';
import type { Run } from './type/inline';

/** The short numbers under which the report speaks of readings, findings, methods and photos. */
export type References = {
  /** R1 … by reading id, E1 … for recorder runs, T1 … for outlines. */
  readonly ofReading: (id: string) => string | undefined;
  readonly ofFinding: (id: string) => string | undefined;
  readonly ofMethod: (id: string) => string | undefined;
  readonly ofPhoto: (id: string) => string | undefined;
  /** Mark 1 … as numbered in the drawings. */
  readonly ofMark: (id: string) => string | undefined;
  readonly methods: readonly Method[];
  /** "R3–R5, R9" as links, for ids of readings, outlines and recorder runs; empty when there are none. */
  readonly cite: (ids: readonly string[]) => readonly Run[];
  /** " [F2, R7]" for what a piece of the argument rests on; empty when it names nothing that is printed. */
  readonly citeRefs: (refs: readonly Ref[]) => readonly Run[];
};

/** A sentence that rests on more than this names the first and leads to where all stand. */
const MOST_CITED = 7;

const link = (label: string, anchor = label): Run => ({ text: label, ink: 'link', goTo: anchor });

/** Numbers in a row as ranges: 3, 4, 5, 9 → 3–5, 9. */
export function ranges(numbers: readonly number[]): readonly (readonly [number, number])[] {
  const found: [number, number][] = [];
  for (const n of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = found.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else found.push([n, n]);
  }
  return found;
}

export function makeReferences(
  record: CaseRecord,
  printedFindings: readonly Finding[],
  allFindings: readonly Finding[],
  methods: readonly Method[],
): References {
  const behind = new Map(
    allFindings.map((each) => [each.id, 'readings' in each ? [...each.readings] : []] as const),
  );
  const readingNo = new Map(record.readings.map(({ id }, i) => [id, i + 1]));
  const runNo = new Map(record.recorderRuns.map(({ id }, i) => [id, i + 1]));
  const traceNo = new Map(record.traces.map(({ id }, i) => [id, i + 1]));
  const findingNo = new Map(printedFindings.map(({ id }, i) => [id, i + 1]));
  const methodNo = new Map(methods.map(({ id }, i) => [id, i + 1]));
  const photoNo = new Map(
    record.photos.filter(({ removed }) => removed === null).map(({ id }, i) => [id, i + 1]),
  );
  const markNo = new Map(
    record.entities.mark.filter(({ removed }) => removed === null).map(({ id }, i) => [id, i + 1]),
  );
  const named = (prefix: string, numbers: ReadonlyMap<string, number>) => (id: string) => {
    const n = numbers.get(id);
    return n === undefined ? undefined : `${prefix}${n}`;
  };
  const separated = (links: readonly Run[]): readonly Run[] =>
    links.flatMap((each, i) => (i === 0 ? [each] : [{ text: ', ' }, each]));

  const cited = (ids: readonly string[]): readonly Run[] => {
    const numbers = ids.flatMap((id) => readingNo.get(id) ?? []);
    const traces = ids.flatMap((id) => traceNo.get(id) ?? []);
    const runs = ids.flatMap((id) => runNo.get(id) ?? []);
    return [
      ...ranges(numbers).flatMap(([from, to]): Run[] =>
        from === to
          ? [link(`R${from}`)]
          : to === from + 1
            ? [link(`R${from}`), link(`R${to}`)]
            : [link(`R${from}–R${to}`, `R${from}`)],
      ),
      ...[...new Set(traces)].map((n) => link(`T${n}`)),
      ...ranges(runs).map(([n]) => link(`E${n}`)),
    ];
  };

  return {
    ofReading: (id) => named('R', readingNo)(id) ?? named('E', runNo)(id) ?? named('T', traceNo)(id),
    ofFinding: named('F', findingNo),
    ofMethod: named('M', methodNo),
    ofPhoto: named('P', photoNo),
    ofMark: named('Mark ', markNo),
    methods,
    cite: (ids) => separated(cited(ids)),
    citeRefs: (refs) => {
      const findings = printedFindings.filter(({ id }) =>
        refs.some((ref) => ref.kind === 'finding' && ref.id === id),
      );
      const covered = new Set(findings.flatMap(({ id }) => behind.get(id) ?? []));
      const readings = refs.flatMap((ref) => {
        if (ref.kind === 'finding') return findingNo.has(ref.id) ? [] : (behind.get(ref.id) ?? []);
        return (ref.kind === 'reading' || ref.kind === 'trace') && !covered.has(ref.id) ? [ref.id] : [];
      });
      const marks = refs.flatMap((ref) => {
        const n = ref.kind === 'mark' ? markNo.get(ref.id) : undefined;
        return n === undefined ? [] : [link(`mark ${n}`, `mark-${n}`)];
      });
      const used = refs.flatMap((ref) => {
        const n = ref.kind === 'method' ? methodNo.get(ref.id) : undefined;
        return n === undefined ? [] : [link(`M${n}`)];
      });
      const evidence = [
        ...marks,
        ...findings.map(({ id }) => link(`F${findingNo.get(id) ?? ''}`)),
        ...cited(readings),
      ];
      const links =
        evidence.length > MOST_CITED
          ? [
              ...evidence.slice(0, MOST_CITED - 1),
              link(`and ${evidence.length - MOST_CITED + 1} more in the table of facts`, 'facts'),
              ...used,
            ]
          : [...evidence, ...used];
      return links.length === 0
        ? []
        : [{ text: ' [', ink: 'link' }, ...separated(links), { text: ']', ink: 'link' }];
    },
  };
}
