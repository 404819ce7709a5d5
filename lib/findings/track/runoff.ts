import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStations, type AtStations } from './at-station';
import { largestOf, worstFinding } from './worst';

const HEADING = { part: 'track', method: asReadMethod } as const;

/** Runoff in 31 ft at the end of a raise, on each rail, where a crew found one and read it. */
export const runoffFindings = (context: Context): readonly Finding[] =>
  (['left', 'right'] as const).flatMap((side): readonly Finding[] => {
    const column = stationColumn(context, 'runoff31', side);
    const what = side === 'left' ? 'runoff31Left' : 'runoff31Right';
    const title = `Runoff in 31 ft at the end of a raise, ${side} rail`;
    const limits = context.rules.trackLimits('runoff31');
    const of: AtStations = { ...HEADING, what, title: `${title}, station `, dimension: 'crossLength' };
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
      largestOf(column.at, Math.abs),
      { limits: 'runoff31', missing: `runoff of the ${side} rail at an undisturbed station` },
    );
    return [
      worst,
      ...atStations(
        of,
        context,
        (index) => column.at[index],
        ({ value, u }) => checkAll(limits, value, u),
      ),
    ];
  });
