import { toCanonical } from '../../readings/convert';
import { curvatureFromMidOrdinate, RULE_OF_THUMB_CHORD_M } from '../../track/curvature';
import { derive, remarked } from '../build';
import type { Context } from '../context';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { along } from '../words';

const CHORD_31_M = toCanonical(31, 'ft', 'alongTrack');

/**
 * Curvature at each station, 1/m, from the first of these that was read there: the 62-ft chord, the
 * 31-ft one, the chord of another length. The length of the other chord is itself a reading.
 */
export const stationCurvatures = oncePerContext((context: Context): readonly (Taken | null)[] => {
  const long = stationColumn(context, 'midOrdinate62').at;
  const short = stationColumn(context, 'midOrdinate31').at;
  const other = stationColumn(context, 'midOrdinateOther').at;
  const otherChord = context.read.take('case', context.record.id, 'otherChord');
  return context.stations.map((_, index) => {
    const at62 = long[index];
    if (at62) return curvatureOf(at62, RULE_OF_THUMB_CHORD_M);
    const at31 = short[index];
    if (at31)
      return remarked(
        curvatureOf(at31, CHORD_31_M),
        'From the 31-ft chord: the 62-ft chord was not read here.',
      );
    const atOther = other[index];
    return atOther && otherChord
      ? remarked(
          derive(curvatureFromMidOrdinate, [atOther, otherChord]),
          `From a chord of ${along(otherChord.value)}.`,
        )
      : null;
  });
});

/** As `derive`, its slope written out: dκ/dm = 8(c² − 4m²)/(c² + 4m²)². */
function curvatureOf(offset: Taken, chordM: number): Taken {
  const m = offset.value / 1000;
  const [square, four] = [chordM * chordM, 4 * m * m];
  const perMm = (8 * (square - four)) / (square + four) ** 2 / 1000;
  return {
    value: curvatureFromMidOrdinate(offset.value, chordM),
    u: Math.abs(perMm) * offset.u,
    readings: offset.readings,
    remarks: offset.remarks,
  };
}
