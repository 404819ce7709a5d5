import { standing } from '../../case/current';
import { chordDiameterMethod, diameterFromChord } from '../../wheel/chord-diameter';
import { derive, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll, conditionRemarks } from '../rules-in-force';
import type { Taken } from '../reading-index';
import { axleName, vehicleTypeOf, whereReadRemarks } from './wheel-title';

const SIDES = ['left', 'right'] as const;

/** Diameter of each wheel from a chord, and the difference on the axle (left less right). */
export const diameterFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'wheelset').flatMap((wheelset): readonly Finding[] => {
    const read = (quantity: string, slot: string): Taken | null =>
      context.read.take('wheelset', wheelset.id, quantity, slot);
    const name = axleName(context, wheelset);
    const diameters = new Map<string, Taken>();
    const each = SIDES.flatMap((slot): readonly Finding[] => {
      const chord = read('chordLength', slot);
      const height = read('chordHeight', slot);
      if (chord === null && height === null) return [];
      const heading: Heading = {
        part: 'wheels',
        method: chordDiameterMethod,
        what: 'wheelDiameter',
        title: `Diameter of the ${slot} wheel, ${name}`,
        subject: { kind: 'wheelset', id: wheelset.id },
        slot,
        remarks: whereReadRemarks(wheelset),
      };
      if (chord === null) return [notMeasured(heading, [`distance between the feet on the ${slot} wheel`])];
      if (height === null) return [notMeasured(heading, [`height above the chord on the ${slot} wheel`])];
      const taken = derive(diameterFromChord, [chord, height]);
      diameters.set(slot, taken);
      return [measured(heading, 'crossLength', taken)];
    });
    const left = diameters.get('left');
    const right = diameters.get('right');
    if (!left || !right) return each;
    const difference = derive((a, b) => a - b, [left, right]);
    const limits = context.rules.equipmentLimits(vehicleTypeOf(context, wheelset), 'diameterDifference');
    return [
      ...each,
      measured(
        {
          part: 'wheels',
          method: chordDiameterMethod,
          what: 'diameterDifference',
          title: `Difference of diameter, left less right, ${name}`,
          subject: { kind: 'wheelset', id: wheelset.id },
          remarks: [
            ...whereReadRemarks(wheelset),
            ...conditionRemarks(limits),
            ...(Math.abs(difference.value) <= 2 * difference.u
              ? ['No larger than the readings could give by themselves.']
              : []),
          ],
        },
        'crossLength',
        difference,
        checkAll(limits, difference.value, difference.u),
      ),
    ];
  });
