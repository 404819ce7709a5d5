import { group } from 'd3-array';
import type { Reading } from '../../case/record';
import { findQuantity } from '../../readings/quantities';
import type { Report } from '../report';
import type { Table } from '../table/table';
import { faint, join, type Inline, type Run } from '../type/inline';
import { DISTURBANCE_WORDS, enteredText } from '../words';

function one(reading: Reading, report: Report): Inline {
  const number = report.refs.ofReading(reading.id) ?? '';
  const state =
    reading.disturbance === 'undisturbed' ? [] : [faint(` (${DISTURBANCE_WORDS[reading.disturbance]})`)];
  return [{ text: enteredText(reading) }, ...state, { text: `  ${number}`, ink: 'link', goTo: number }];
}

const several = (readings: readonly Reading[], report: Report, label: boolean): Inline =>
  readings.flatMap((reading, i): Run[] => {
    const slot = label && reading.slot !== '' ? [faint(`${slotLabel(reading)}: `)] : [];
    return [...(i === 0 ? [] : [{ text: '\n' }]), ...slot, ...join(one(reading, report))];
  });

const slotLabel = (reading: Reading): string => {
  const quantity = findQuantity(reading.quantity);
  const known = quantity?.slots.find(({ id }) => id === reading.slot)?.label;
  return known ?? (quantity?.openSlots === 'clockDegrees' ? `${reading.slot}°` : reading.slot);
};

/** The standing readings about one thing: a row for each quantity, left and right beside each other. */
export function readingsTable(readings: readonly Reading[], report: Report): Table {
  const byQuantity = group(readings, ({ quantity }) => quantity);
  const sided = readings.some(({ slot }) => slot === 'left' || slot === 'right');
  const name = (id: string): string => {
    const quantity = findQuantity(id);
    return quantity?.kind === 'observation' ? quantity.question : (quantity?.name ?? id);
  };
  const elsewhere = sided && readings.some(({ slot }) => slot !== 'left' && slot !== 'right');
  return {
    columns: [
      { head: 'Reading', share: sided ? 0.3 : 0.46 },
      ...(sided ? [{ head: 'Left' }, { head: 'Right' }] : [{ head: 'As entered' }]),
      ...(elsewhere ? [{ head: 'Elsewhere, or read once' }] : []),
    ],
    rows: [...byQuantity].map(([id, all]) => {
      const at = (slot: string): readonly Reading[] => all.filter((reading) => reading.slot === slot);
      const rest = all.filter(({ slot }) => slot !== 'left' && slot !== 'right');
      return {
        cells: [
          name(id),
          ...(sided
            ? [several(at('left'), report, false), several(at('right'), report, false)]
            : [several(all, report, true)]),
          ...(elsewhere ? [several(rest, report, true)] : []),
        ],
      };
    }),
  };
}
