import { LESS_THAN_62_FT, WARP_BASE_M } from '../../track/warp';
import { derive, remarked } from '../build';
import type { Context, Station } from '../context';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { nearPod, standingCrosslevel, worstWarpAmong } from '../track/warp';
import { along } from '../words';

/** Positions a millimetre apart are the same position. */
const SAME_POSITION_M = 0.001;

type AtStation = { readonly station: Station; readonly index: number; readonly taken: Taken };

const inWindow = ({ positionM }: Station): boolean =>
  positionM >= -WARP_BASE_M - SAME_POSITION_M && positionM <= SAME_POSITION_M;

/** Entries of a column at the stations within 62 ft before the POD, the POD included. */
function beforePod(context: Context, at: readonly (Taken | null)[]): readonly AtStation[] {
  return context.stations.flatMap((station, index) => {
    const taken = at[index];
    return taken && inWindow(station) ? [{ station, index, taken }] : [];
  });
}

const most = (all: readonly AtStation[]): AtStation | null =>
  all.reduce<AtStation | null>(
    (worst, each) => (worst === null || each.taken.value > worst.taken.value ? each : worst),
    null,
  );

const where = ({ name, positionM }: Station): string =>
  `At station ${name}, ${along(positionM)} from the POD.`;

/** Widest standing gauge within 62 ft before the POD, with the movement of both rails that goes with it. */
export function gaugeAtPod(context: Context): {
  readonly standing: Taken | null;
  readonly movement: Taken | null;
} {
  const gauge = stationColumn(context, 'gauge');
  const widest = most(beforePod(context, gauge.at));
  return {
    standing: widest === null ? null : remarked(widest.taken, where(widest.station), ...gauge.remarks),
    movement: movementNear(context, widest),
  };
}

function movementNear(context: Context, widest: AtStation | null): Taken | null {
  const left = stationColumn(context, 'lateralMovement', 'left').at;
  const right = stationColumn(context, 'lateralMovement', 'right').at;
  const both = context.stations.map((_, index) => {
    const onLeft = left[index];
    const onRight = right[index];
    if (onLeft && onRight) return derive((a, b) => a + b, [onLeft, onRight]);
    const one = onLeft ?? onRight;
    return one
      ? remarked(one, `Movement of the ${onLeft ? 'right' : 'left'} rail not recorded: at least this much.`)
      : null;
  });
  const own = widest === null ? null : (both[widest.index] ?? null);
  if (own !== null) return remarked(own, 'At the same station as the gauge.');
  const other = most(beforePod(context, both));
  return other === null
    ? null
    : remarked(
        other.taken,
        where(other.station),
        'Not read at the station of widest gauge: the largest movement within 62 ft before the POD is taken.',
      );
}

/** Size of the greatest change of crosslevel less than 62 ft apart, within the 62 ft before the POD. */
export function warpBeforePod(context: Context): Taken | null {
  const crosslevel = standingCrosslevel(context);
  const worst = worstWarpAmong(context, crosslevel, LESS_THAN_62_FT, nearPod(context));
  if (worst === null) return null;
  const from = context.stations[worst.pair.from]?.name ?? '?';
  const to = context.stations[worst.pair.to]?.name ?? '?';
  return remarked(
    { ...worst.taken, value: Math.abs(worst.taken.value) },
    `Between stations ${from} and ${to}.`,
    ...stationColumn(context, 'crosslevel').remarks,
  );
}

/** Most defective ties in 39 ft at a station within 62 ft before the POD. */
export function defectiveTiesAtPod(context: Context): Taken | null {
  const worst = most(beforePod(context, stationColumn(context, 'defectiveTies').at));
  return worst === null ? null : remarked(worst.taken, where(worst.station));
}
