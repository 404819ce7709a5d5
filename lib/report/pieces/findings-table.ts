import type { Finding, LimitCheck } from '../../findings/finding';
import { sharedRemarks } from '../../findings/shared-remarks';
import { displayUnit, formatMeasure, formatWithUncertainty } from '../../readings/format';
import type { Dimension } from '../../readings/unit';
import type { Report } from '../report';
import type { Table } from '../table/table';
import { faint, join, type Inline, type Run } from '../type/inline';
import { together } from '../words';

/** Certainty is not a probability anybody has: the ends are open. */
export const chance = (share: number): string =>
  share < 0.005 ? '< 1 %' : share > 0.995 ? '> 99 %' : `${Math.round(share * 100)} %`;

function limitText(check: LimitCheck, dimension: Dimension, system: Report['system']): string {
  const value = formatMeasure(check.limit, { dimension, unit: displayUnit(dimension, system) });
  return `${check.sense === 'max' ? 'at most' : 'at least'} ${value}, ${check.citation}`;
}

function heldAgainst(finding: Finding, report: Report): Inline {
  if (finding.kind !== 'measured') return '';
  return finding.limits.flatMap((check, i): Run[] => [
    ...(i === 0 ? [] : [{ text: '\n' }]),
    { text: `${limitText(check, finding.dimension, report.system)}: ` },
    {
      text: check.exceeded ? 'beyond it' : 'within it',
      face: check.exceeded ? 'bold' : 'body',
      ink: check.exceeded ? 'warn' : 'text',
    },
    { text: ` (beyond: ${together(chance(check.probabilityExceeds))})` },
  ]);
}

/** The value of a finding as it is printed. */
export function findingValue(finding: Finding, report: Report): Inline {
  switch (finding.kind) {
    case 'measured':
      return finding.dimension === 'count' && Number.isInteger(finding.value)
        ? String(finding.value)
        : together(
            formatWithUncertainty(finding.value, finding.u, finding.dimension, report.system).replace(
              ' (k = 2)',
              '',
            ),
          );
    case 'passFail':
      return [
        { text: finding.pass ? 'Pass' : 'Fail', face: finding.pass ? 'body' : 'bold' },
        { text: `: ${finding.check}` },
      ];
    case 'notMeasured':
      return [faint('not measured')];
    case 'outOfRange':
      return [{ text: 'out of range of the method', face: 'italic' }];
  }
}

function remarksOf(finding: Finding): readonly string[] {
  const own =
    finding.kind === 'notMeasured'
      ? finding.missing.length === 0
        ? []
        : [`Missing: ${finding.missing.join('; ')}.`]
      : finding.kind === 'outOfRange'
        ? [finding.why]
        : [];
  return [...own, ...finding.remarks];
}

/** A list of more links than this is printed once in a table; later findings from the same readings lead to the first. */
const LONG_LIST = 12;

/** What a finding came from, for each finding of a table in turn. */
function citer({ refs }: Report): (finding: Finding) => Inline {
  const first = new Map<string, string>();
  return (finding) => {
    if (!('readings' in finding)) return '';
    const links = refs.cite(finding.readings);
    if (links.length <= 2 * LONG_LIST) return join([faint('\nFrom ')], links);
    const key = links.map(({ text }) => text).join('');
    const before = first.get(key);
    if (before !== undefined)
      return join([faint('\nFrom the same readings as ')], [{ text: before, ink: 'link', goTo: before }]);
    first.set(key, refs.ofFinding(finding.id) ?? '');
    return join([faint('\nFrom ')], links);
  };
}

/** Findings with value, limits, the readings they came from and their method; remarks on several last. */
export function findingsTable(findings: readonly Finding[], report: Report): Table {
  const { refs } = report;
  const compared = findings.some((each) => each.kind === 'measured' && each.limits.length > 0);
  const shared = sharedRemarks(findings.map((finding) => ({ remarks: remarksOf(finding) })));
  const cameFrom = citer(report);
  return {
    columns: [
      { head: 'No.', width: 30 },
      { head: 'Finding, and what it comes from', ...(compared ? { share: 0.42 } : {}) },
      { head: `Value, ${together('± U (k = 2)')}`, align: 'right' },
      ...(compared ? [{ head: 'Held against' }] : []),
      { head: 'Method', width: 40 },
    ],
    notes: [
      ...(compared
        ? ['In brackets: how probable it is, given the uncertainty, that the value lies beyond the limit.']
        : []),
      ...[...shared].map(([remark, letter]) => `${letter}  ${remark}`),
    ],
    rows: findings.map((finding) => {
      const number = refs.ofFinding(finding.id) ?? '';
      const method = refs.ofMethod(finding.method.id);
      const remarks = remarksOf(finding);
      const own = remarks.filter((remark) => !shared.has(remark));
      const lettered = remarks.flatMap((remark) => shared.get(remark) ?? []);
      return {
        anchor: number,
        cells: [
          number,
          join(
            finding.title,
            lettered.length === 0 ? '' : [faint(` (${lettered.join(', ')})`)],
            ...own.map((remark) => [faint(`\n${remark}`)]),
            cameFrom(finding),
          ),
          findingValue(finding, report),
          ...(compared ? [heldAgainst(finding, report)] : []),
          method === undefined ? '' : [{ text: method, ink: 'link' as const, goTo: method }],
        ],
      };
    }),
  };
}
