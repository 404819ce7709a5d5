import { asReadMethod } from '../as-read';
import { measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { largest, worstFinding, type At } from './worst';

const HEADING = { part: 'track', method: asReadMethod } as const;

/** Runoff in 31 ft at the end of a raise, on each rail, where a crew found one and read it. */
export const runoffFindings = (context: Context): readonly Finding[] =>
  (['left', 'right'] as const).flatMap((side): readonly Finding[] => {
    const column = stationColumn(context, 'runoff31', side);
    const what = side === 'left' ? 'runoff31Left' : 'runoff31Right';
    const title = `Runoff in 31 ft at the end of a raise, ${side} rail`;
    const limits = context.rules.trackLimits('runoff31');
    const all: At[] = [];
    const perStation = context.stations.flatMap((station, index): readonly Finding[] => {
      const taken = column.at[index];
      if (!taken) return [];
      all.push({ index, taken });
      const heading: Heading = {
        ...HEADING,
        what,
        title: `${title}, station ${station.name}`,
        subject: { kind: 'station', id: station.id },
      };
      return [measured(heading, 'crossLength', taken, checkAll(limits, taken.value, taken.u))];
    });
    const worst = worstFinding(
      context,
      {
        ...HEADING,
        what: `${what}Worst`,
        title: `${title}, greatest`,
        subject: null,
        remarks: [
          'Read where a raise ends; profile alone does not tell where track was raised.',
          ...column.remarks,
        ],
      },
      largest(all, Math.abs),
      { limits: 'runoff31', missing: `runoff of the ${side} rail at an undisturbed station` },
    );
    return [worst, ...perStation];
  });
