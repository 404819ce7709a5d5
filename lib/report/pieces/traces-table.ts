import { nameOf } from '../../case/name-of';
import type { Trace } from '../../case/trace';
import { makingText, tracePart } from '../../case/trace-words';
import type { Report } from '../report';
import type { Table } from '../table/table';
import { mono, type Run } from '../type/inline';
import { DISTURBANCE_WORDS, nameOfPerson, shortTime, together } from '../words';

const IN_100_PARTS = 100;

function uncertaintyText({ uncertainty: { acrossMm, scale, because } }: Trace): string {
  const share = scale === 0 ? '' : `, ${Number((scale * IN_100_PARTS).toPrecision(2))} % of length`;
  return [`${together(`${Number(acrossMm.toPrecision(2))} mm`)} across the line${share}.`, ...because].join(
    ' ',
  );
}

const handRuns = ({ hand, mirrored }: Trace): readonly Run[] => [
  ...(mirrored ? [{ text: ' Drawn the other way round.' }] : []),
  ...(hand === null ? [] : [{ text: ` Placed by hand: ${hand.reason}.` }]),
];

/** Every outline of the case, removed ones pale; each row is where T1 … lead. */
export const tracesTable = ({ record, refs, ...report }: Report): Table => ({
  size: 7,
  columns: [
    { head: 'No.', width: 28 },
    { head: 'Of', share: 0.14 },
    { head: 'What' },
    { head: 'How it was made', share: 0.16 },
    { head: 'Standard uncertainty (k = 1)', share: 0.18 },
    { head: 'File and SHA-256', share: 0.16 },
    { head: 'Taken by' },
    { head: 'Taken at' },
    { head: 'State' },
    { head: 'Remarks' },
  ],
  rows: record.traces.map((trace) => {
    const number = refs.ofReading(trace.id) ?? '';
    const instrument = report.instrument(trace.instrumentId);
    return {
      anchor: number,
      faint: trace.removed !== null,
      cells: [
        number,
        nameOf(record, trace.subject),
        tracePart(trace),
        [
          {
            text: `${makingText(trace.making)}; ${trace.pointsMm.length / 2} points.`,
          },
          ...handRuns(trace),
        ],
        uncertaintyText(trace),
        [{ text: `${trace.fileName}\n` }, mono(trace.sha256)],
        together(nameOfPerson(record, trace.personId) ?? '–'),
        trace.takenAt === null ? '–' : shortTime(trace.takenAt),
        DISTURBANCE_WORDS[trace.disturbance],
        [
          instrument === undefined ? '' : `${String(instrument.fields.name ?? '')}.`,
          trace.note,
          trace.removed === null ? '' : `Removed: ${trace.removed.reason}`,
        ]
          .filter(Boolean)
          .join(' '),
      ],
    };
  }),
});
