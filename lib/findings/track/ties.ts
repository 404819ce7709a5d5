import { quantityOf } from '../../readings/quantities';
import { asReadMethod } from '../as-read';
import { measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { stationColumn } from '../station-column';
import { largest, worstFinding, type At } from './worst';

const COUNTS = [
  {
    quantity: 'defectiveTies',
    slot: '',
    what: 'defectiveTies',
    title: 'Defective ties in 39 ft',
    remark:
      '49 CFR 213.109 counts the sound ties in 39 ft, which the number of defective ones alone does not give: not compared with it.',
  },
  ...(['left', 'right'] as const).map((side) => ({
    quantity: 'fasteningsLoose',
    slot: side,
    what: `fasteningsLoose${side === 'left' ? 'Left' : 'Right'}`,
    title: `Fastenings loose, drawn or missing in 39 ft, ${side} rail`,
    remark: '',
  })),
];

/** Counts of what held the rail: per station, and the most. */
export const tieFindings = (context: Context): readonly Finding[] =>
  COUNTS.flatMap(({ quantity, slot, what, title, remark }) => {
    const column = stationColumn(context, quantity, slot);
    const all: At[] = [];
    const perStation = context.stations.flatMap((station, index): readonly Finding[] => {
      const taken = column.at[index];
      if (!taken) return [];
      all.push({ index, taken });
      const heading: Heading = {
        part: 'track',
        method: asReadMethod,
        what,
        title: `${title}, station ${station.name}`,
        subject: { kind: 'station', id: station.id },
      };
      return [measured(heading, 'count', taken)];
    });
    const most = worstFinding(
      context,
      {
        part: 'track',
        method: asReadMethod,
        what: `${what}Most`,
        title: `${title}, most at one station`,
        subject: null,
        remarks: [remark, ...column.remarks],
      },
      largest(all, (value) => value),
      { missing: `${quantityOf(quantity).name.toLowerCase()} at an undisturbed station`, dimension: 'count' },
    );
    return [most, ...perStation];
  });
