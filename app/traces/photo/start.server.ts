import type { PhotoTracerStart } from '~/app/components/traces/photo/PhotoTracer';
import type { LoadedCase } from '~/app/case.server';
import { systemOf } from '~/app/readings/take.server';
import type { Photo } from '~/lib/case/record';
import type { ScalePair } from '~/lib/case/trace';
import { fromCanonical } from '~/lib/readings/convert';
import type { UnitSystem } from '~/lib/readings/unit';
import { NOTHING_DRAWN } from './drawing';
import type { ScaleWay } from './scale';

const EMPTY: PhotoTracerStart = { drawing: NOTHING_DRAWN, way: 'sheet', distances: ['', ''] };

const WAY_OF_PAIRS: Readonly<Record<number, ScaleWay>> = { 1: 'pair', 2: 'cross', 4: 'sheet' };

const marksOf = (scale: readonly ScalePair[]): readonly (readonly [number, number])[] =>
  scale.length === 4 ? scale.map(({ from }) => from) : scale.flatMap(({ from, to }) => [from, to]);

/** Fine enough that the distance as it was typed comes back. */
function typed(mm: number | undefined, system: UnitSystem): string {
  if (mm === undefined) return '';
  const unit = system === 'us' ? 'in' : 'mm';
  return `${Number(fromCanonical(mm, unit, 'crossLength').toFixed(4))} ${unit}`;
}

/**
 * Where tracing begins: with an empty picture, or with the points of an outline that was traced on the
 * same photo before, to set some of them better.
 */
export function startOf({ record }: LoadedCase, photo: Photo, again: string | null): PhotoTracerStart {
  const before = record.traces.find(({ id, sha256 }) => id === again && sha256 === photo.sha256);
  if (before?.making.by !== 'photo') return EMPTY;
  const { scale, clicks } = before.making;
  const system = systemOf(record.fields);
  const [first, second] = scale;
  return {
    drawing: { marks: marksOf(scale), clicks, stretches: clicks.slice(1).map(() => null) },
    way: WAY_OF_PAIRS[scale.length] ?? EMPTY.way,
    distances: [typed(first?.apartMm, system), typed(second?.apartMm, system)],
  };
}
