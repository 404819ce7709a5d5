import { arrow } from '../pieces/arrow';
import { across } from '../pieces/dimension';
import { line, pen, words } from '../pieces/draw';
import { railPlan } from '../pieces/rail-plan';
import { tieAbove } from '../pieces/track-parts';
import { sketch } from './sketch';

const POD = 224;
const STEP = 54;
const STATIONS = [-3, -2, -1, 0, 1];

export const stations = sketch(
  'Chalking the stations',
  'Track from above. Station 0 is the POD; stations are chalked every 15 ft 6 in against the direction of travel, numbered minus 1, minus 2 and so on, and on past the POD with a plus.',
  [
    ...Array.from({ length: 17 }, (_, i) => tieAbove(14 + i * 18, 66, 8, 76)).flat(),
    ...railPlan(10, 310, 78, 8, 'bottom'),
    ...railPlan(10, 310, 122, 8, 'top'),
    ...STATIONS.flatMap((station) => {
      const x = POD + station * STEP;
      return [
        line(
          [x, station === 0 ? 58 : 70],
          [x, station === 0 ? 150 : 138],
          pen(station === 0 ? 'mark' : 'ink', station === 0 ? 2 : 1.2, station === 0 ? [9, 3, 2, 3] : [4, 2]),
        ),
        words(x, 162, station === 0 ? '0' : station < 0 ? `−${-station}` : `+${station}`, {
          anchor: 'middle',
          bold: true,
        }),
      ];
    }),
    words(POD, 50, 'POD', { anchor: 'middle', bold: true }),
    ...across(POD - 2 * STEP, POD - STEP, 46, 70, 70, '', {}),
    words(POD - 1.5 * STEP, 36, '15 ft 6 in', { anchor: 'middle' }),
    ...arrow([190, 186], [306, 186], { width: 1.6 }),
    words(186, 190, 'direction of travel', { anchor: 'end' }),
    ...arrow([150, 18], [26, 18], { ink: 'faint', width: 1.2 }),
    words(156, 22, 'walk back, chalk as you go', { ink: 'ink' }),
  ],
);
