import { standing } from '../../case/current';
import { readAgainstTravel } from '../../case/facing';
import { trackFindings } from '../../findings/track';
import { conditionFindings } from '../../findings/rules/conditions';
import { otherClasses, stationClasses } from '../../findings/track/class-met';
import { exceptionWords } from '../../findings/track/exception-words';
import { turnoutReadingFindings } from '../../findings/turnout/turnout-readings';
import { displayUnit, formatMeasure } from '../../readings/format';
import { absent, absentMany } from '../pieces/absent';
import { trackChartDrawing } from '../pieces/drawings';
import { chance, findingsTable, findingValue } from '../pieces/findings-table';
import type { Report, Section } from '../report';
import type { Writer } from '../writer';
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

const NOT_EVEN = 'not even the lowest';

/** Most exceptions printed; the rest is counted. */
const MOST_EXCEPTIONS = 120;

/** The highest class each station meets, and every limit and condition of the class in force it does not. */
function classes(report: Report, writer: Writer): void {
  const { context } = report;
  const { track, trackClass } = context.rules;
  const findings = [
    ...trackFindings(context),
    ...conditionFindings(context),
    ...turnoutReadingFindings(context),
  ];
  const stations = stationClasses(context, findings);
  const others = otherClasses(context, findings);
  if (track === undefined || stations.length + others.length === 0) return;
  const counts = [...track.classes.map(({ label }) => label), null].flatMap((label) => {
    const count = stations.filter(({ highest }) => highest === label).length;
    return count === 0 ? [] : [`${label ?? NOT_EVEN} at ${count}`];
  });
  if (counts.length > 0)
    writer.text(
      `Highest class met, by station, as far as each was read: ${counts.join(', ')}. Each condition is taken alone.`,
    );
  if (others.length > 0)
    writer.text(`${others.map(({ name, highest }) => `${name}: ${highest ?? NOT_EVEN}`).join('; ')}.`);
  const exceptions = [
    ...others.flatMap(({ name, exceptions: own }) => own.map((each) => ({ place: name, each }))),
    ...stations.flatMap(({ station, exceptions: own }) => own.map((each) => ({ place: station.name, each }))),
  ];
  if (exceptions.length === 0 || trackClass === undefined) return;
  const amount = (value: number, unit: 'mm' | 'count'): string =>
    unit === 'count'
      ? String(value)
      : formatMeasure(value, {
          dimension: 'crossLength',
          unit: displayUnit('crossLength', report.system),
        });
  writer.table(`Exceptions to ${trackClass.label}, ${track.name}`, {
    columns: [
      { head: 'Where' },
      { head: 'What' },
      { head: 'Section' },
      { head: 'Found' },
      { head: 'Limit' },
      { head: 'Excess' },
      { head: 'Beyond it' },
    ],
    notes: [
      'Beyond it: how probable it is, given the uncertainty of the readings.',
      ...(exceptions.length > MOST_EXCEPTIONS
        ? [`${exceptions.length - MOST_EXCEPTIONS} more are on the Track screen.`]
        : []),
    ],
    rows: exceptions.slice(0, MOST_EXCEPTIONS).map(({ place, each }) => {
      const { what, section, limit, answer, excess, unit, probability } = exceptionWords(each);
      return {
        cells: [
          place,
          what,
          section,
          answer ?? findingValue(each.finding, report),
          limit,
          excess === null ? '–' : amount(excess, unit),
          probability === null ? '–' : chance(probability),
        ],
      };
    }),
  });
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
    if (readAgainstTravel(report.record))
      writer.text(
        'The sheet was read facing against the direction of travel: positions, left and right are turned round here; the appendix has them as entered.',
      );
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
    classes(report, writer);
    if (findings.length === 0) absent(writer, 'Anything a finding could be made from');
    else table();
    writer.text([
      { text: 'All station readings stand in the sheet of appendix A', ink: 'link', goTo: 'stations' },
      { text: '.' },
    ]);
    trackChartDrawing(report, writer);
  },
};
