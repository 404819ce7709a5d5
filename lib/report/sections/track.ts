import { standing } from '../../case/current';
import { absent, absentMany } from '../pieces/absent';
import { trackChartDrawing } from '../pieces/drawings';
import { findingsTable } from '../pieces/findings-table';
import type { Report, Section } from '../report';
import { faint, type Inline } from '../type/inline';

function states({ record }: Report): string {
  const stations = standing(record, 'station');
  const count = (state: string): number =>
    stations.filter(({ fields }) => (fields.disturbance ?? 'notSaid') === state).length;
  const parts = (
    [
      ['undisturbed', 'undisturbed'],
      ['disturbed', 'disturbed by the derailment'],
      ['repaired', 'repaired since'],
      ['notSaid', 'without a statement of their state'],
    ] as const
  ).flatMap(([state, words]) => (count(state) === 0 ? [] : [`${count(state)} ${words}`]));
  return `${stations.length} stations were read: ${parts.join(', ')}. Only undisturbed stations feed a finding.`;
}

/** Findings beyond a limit, as sentences; where all are within, that is said. */
function beyond(report: Report): readonly Inline[] {
  return report.findings.flatMap((finding): Inline[] => {
    if (finding.part !== 'track' || finding.kind !== 'measured') return [];
    const checks = finding.limits.filter(({ exceeded }) => exceeded);
    if (checks.length === 0) return [];
    const number = report.refs.ofFinding(finding.id) ?? '';
    return [
      [
        { text: `${finding.title}: beyond ${checks.map(({ citation }) => citation).join(' and ')} ` },
        { text: `[${number}]`, ink: 'link', goTo: number },
        { text: '.' },
      ],
    ];
  });
}

export const trackSection: Section = {
  id: 'track',
  title: 'Track readings',
  kind: 'numbered',
  build(report, writer) {
    const findings = report.findings.filter(({ part }) => part === 'track');
    const table = (): void =>
      writer.table('Track findings: the worst of the readings', findingsTable(findings, report));
    if (standing(report.record, 'station').length === 0) {
      absentMany(writer, 'Track stations');
      if (findings.length > 0) table();
      return;
    }
    const compared = findings.some((each) => each.kind === 'measured' && each.limits.length > 0);
    writer.text(states(report));
    const over = beyond(report);
    if (over.length > 0) {
      writer.lead('Beyond the limits of the class');
      writer.list(over);
    } else {
      writer.text(
        compared
          ? 'No finding below lies beyond a limit it is held against.'
          : [faint('The readings were not held against limits: see the remarks in the table.')],
      );
    }
    writer.text(
      'A limit exceeded is a fact about the track as measured and not a cause. The probability beside each comparison respects the uncertainty of the reading.',
    );
    if (findings.length === 0) absent(writer, 'Anything a finding could be made from');
    else table();
    writer.text([
      { text: 'All station readings stand in the sheet of appendix A', ink: 'link', goTo: 'stations' },
      { text: '.' },
    ]);
    trackChartDrawing(report, writer);
  },
};
