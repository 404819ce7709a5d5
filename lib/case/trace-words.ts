import { nameOf } from './name-of';
import type { CaseRecord } from './record';
import type { Trace, TraceMaking } from './trace';

type Of = Pick<Trace, 'shape' | 'side' | 'behindMm' | 'making'>;

/** Where on a point its cross-section lies, as it was typed: "at the tip", "1 ft behind the tip". */
export const behindText = ({ behindMm, making }: Pick<Trace, 'behindMm' | 'making'>): string =>
  behindMm === 0 ? 'at the tip' : `${making.behindEntered ?? `${behindMm} mm`} behind the tip`;

/** What an outline is of, where its wheelset, rail or turnout is already named: "Outline, left wheel". */
export function tracePart(trace: Of): string {
  switch (trace.shape) {
    case 'wheel':
      return `Outline, ${trace.side} wheel`;
    case 'rail':
      return 'Outline, rail head';
    case 'point':
      return `Outline, ${trace.side} point ${behindText(trace)}`;
  }
}

/** How an outline is called where it stands alone. */
export const nameOfTrace = (record: CaseRecord, trace: Of & Pick<Trace, 'subject'>): string =>
  `${tracePart(trace)}, ${nameOf(record, trace.subject)}`;

const MM_PER_INCH = 25.4;

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** How the line was made, in words: "From a file: x in column 1, y in column 2, in mm". */
export const makingText = (making: TraceMaking): string =>
  `${wayText(making)}${making.plumb ? ', its upright square to the track' : ''}`;

function wayText(making: TraceMaking): string {
  switch (making.by) {
    case 'file': {
      const [x, y] = making.columns;
      const turned = (['x', 'y'] as const).filter((axis) => making.flipped[axis]);
      const over = turned.length === 0 ? '' : `, ${turned.join(' and ')} the other way round`;
      return `From a file: x in column ${x + 1}, y in column ${y + 1}, in ${making.unit === 'in' ? 'inches' : 'mm'}${over}`;
    }
    case 'photo': {
      const tilt = making.scale.length > 1 ? ', the tilt of the camera taken out' : '';
      return `Traced on a picture: ${count(making.clicks.length, 'point')} set by hand, ${count(making.scale.length, 'known distance')}${tilt}`;
    }
    case 'pins': {
      const pitch = making.unit === 'in' ? making.pitchMm / MM_PER_INCH : making.pitchMm;
      return `Typed from a pin gauge, pins ${Number(pitch.toPrecision(5))} ${making.unit} apart`;
    }
  }
}
