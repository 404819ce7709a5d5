import type { ScalePair } from '~/lib/case/trace';
import { parseMeasure } from '~/lib/readings/parse';
import type { Measure } from '~/lib/readings/quantity';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import type { PixelPoint } from '~/lib/tracing/line';
import { rectangleSides } from '~/lib/tracing/scale-marks';

/** Ways of telling how large the drawing is, each with the number of points to mark. */
export const SCALE_WAYS = {
  sheet: {
    label: 'The corners of a sheet or another rectangle',
    marks: 4,
    help: 'Mark the four corners in order round it, the first two at the ends of a short side. A tilted camera shows, and is taken out.',
    distances: ['Short side', 'Long side'],
  },
  cross: {
    label: 'A cross of two lines that halve each other',
    marks: 4,
    help: 'Two lines drawn, or two rules laid, at right angles through the middle of each other. Mark both ends of the first, then both ends of the second. A tilted camera shows, and is taken out.',
    distances: ['Length of the first', 'Length of the second'],
  },
  pair: {
    label: 'One distance',
    marks: 2,
    help: 'Mark two points a known distance apart, best as long as the drawing. A tilted camera cannot be seen, so the result is less certain.',
    distances: ['Distance'],
  },
} as const;
export type ScaleWay = keyof typeof SCALE_WAYS;

export const isScaleWay = (text: unknown): text is ScaleWay =>
  typeof text === 'string' && Object.hasOwn(SCALE_WAYS, text);

/** Usual sheets, as somebody would type their sides. Sources: ANSI/ASME Y14.1 size A; ISO 216 A4. */
export const SHEETS = [
  { id: 'letter', label: 'Letter, 8 1/2 × 11 in', sides: ['8 1/2 in', '11 in'] },
  { id: 'a4', label: 'A4, 210 × 297 mm', sides: ['210 mm', '297 mm'] },
] as const;

/** A distance marked on the picture; no reading of the case, so it stands in no catalogue. */
const DISTANCE: Measure = {
  kind: 'measure',
  id: 'scaleDistance',
  name: 'Distance',
  short: 'Distance',
  subject: 'case',
  slots: [],
  dimension: 'crossLength',
  bareUnit: { us: 'in', metric: 'mm' },
  possible: [5, 2000],
  usual: [5, 2000],
  defaultResolution: { halfWidth: 0.25, source: 'rule; common practice, no source' },
  reference: { low: 5, high: 2000, source: 'engineering judgement' },
};

/** Scale pairs from the marks and the distances as typed; says which is missing, and what to enter. */
export function scaleOf(
  way: ScaleWay,
  marks: readonly PixelPoint[],
  distances: readonly string[],
  system: UnitSystem,
): Result<readonly ScalePair[]> {
  const { marks: needed, distances: names } = SCALE_WAYS[way];
  if (marks.length < needed)
    return refuse(
      `Mark ${needed} points for the scale on the picture; ${marks.length === 0 ? 'none is' : `${marks.length} of them ${marks.length === 1 ? 'is' : 'are'}`} marked.`,
    );
  const lengths: number[] = [];
  for (const [index, name] of names.entries()) {
    const text = distances[index]?.trim() ?? '';
    if (text === '') return refuse(`${name}: enter it, such as 6 in or 150 mm.`);
    const parsed = parseMeasure(text, DISTANCE, system);
    if (!parsed.ok) return refuse(`${name}: ${parsed.message}`);
    lengths.push(parsed.value.value);
  }
  const [a, b, c, d] = marks;
  const [first, second] = lengths;
  if (a === undefined || b === undefined || first === undefined) return refuse('Mark the scale first.');
  if (way === 'pair') return ok([{ from: a, to: b, apartMm: first }]);
  if (c === undefined || d === undefined || second === undefined) return refuse('Mark the scale first.');
  if (way === 'sheet') return ok(rectangleSides([a, b, c, d], first, second));
  return ok([
    { from: a, to: b, apartMm: first },
    { from: c, to: d, apartMm: second },
  ]);
}
