import { bisectLeft, bisectRight } from 'd3-array';
import { segmentationMethod, segmentLine, type LinePart, type PartKind } from '../../track/segments';
import { measured, notMeasured, readingsOf, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { along, curvatureText } from '../words';
import { stationCurvatures } from './station-curvatures';
import { placesOf } from './uniform';

export const PART_WORDS: Readonly<Record<PartKind, string>> = {
  tangent: 'tangent',
  transition: 'transition',
  curve: 'curve',
};

/** Tangents, transitions and curves of the sheet; null with too few readings. */
export const lineSegments = oncePerContext((context: Context): readonly LinePart[] | null => {
  const taken = stationCurvatures(context);
  const curvatures = new Float64Array(taken.length).fill(NaN);
  const us = new Float64Array(taken.length);
  let read = 0;
  for (let index = 0; index < taken.length; index += 1) {
    const here = taken[index];
    if (!here) continue;
    curvatures[index] = here.value;
    us[read] = here.u;
    read += 1;
  }
  const u = us.subarray(0, read).sort()[Math.floor(read / 2)] ?? 0;
  return segmentLine(placesOf(context).positionsM, curvatures, u)?.parts ?? null;
});

/** The part a place lies on; beyond the sheet the nearest one. */
export function partAt(parts: readonly LinePart[], positionM: number): LinePart | null {
  const within = parts.find(({ toM }) => positionM <= toM);
  return within ?? parts.at(-1) ?? null;
}

/** A transition that keeps at least this share of its greater curvature leads to no tangent: the curve swings there. Engineering judgement. */
const SWINGS_ABOVE = 0.5;

function kindOf({ kind, curvatureFromPerM, curvatureToPerM }: LinePart): PartKind {
  if (kind !== 'transition') return kind;
  const [from, to] = [Math.abs(curvatureFromPerM), Math.abs(curvatureToPerM)];
  const sameHand = curvatureFromPerM * curvatureToPerM > 0;
  return sameHand && Math.min(from, to) >= SWINGS_ABOVE * Math.max(from, to) ? 'curve' : 'transition';
}

/**
 * The tangent, spiral or body of a curve that a place lies on. Parts of one curve that only swing about
 * its curvature, as at a bad joint, belong to its body.
 */
export function stretchAt(
  parts: readonly LinePart[],
  positionM: number,
): (Pick<LinePart, 'fromM' | 'toM'> & { readonly kind: PartKind }) | null {
  const at = partAt(parts, positionM);
  if (at === null) return null;
  const kind = kindOf(at);
  if (kind === 'transition') return { kind, fromM: at.fromM, toM: at.toM };
  const belongs = (part: LinePart | undefined): part is LinePart =>
    part !== undefined &&
    kindOf(part) === kind &&
    (kind === 'tangent' || part.curvaturePerM * at.curvaturePerM > 0);
  let [first, last] = [parts.indexOf(at), parts.indexOf(at)];
  while (belongs(parts[first - 1])) first -= 1;
  while (belongs(parts[last + 1])) last += 1;
  return { kind, fromM: parts[first]?.fromM ?? at.fromM, toM: parts[last]?.toM ?? at.toM };
}

const HEADING = { part: 'track', method: segmentationMethod, subject: null } as const;

/** Curvature of every part of the line, and where one part meets the next. */
export function lineSegmentFindings(context: Context): readonly Finding[] {
  const parts = lineSegments(context);
  if (parts === null) {
    return [
      notMeasured({ ...HEADING, what: 'linePart', title: 'Tangents, transitions and curves' }, [
        'mid-ordinates at six or more undisturbed stations',
      ]),
    ];
  }
  return [
    ...parts.flatMap((part, index) => curvatureOf(context, part, index)),
    ...parts.slice(1).flatMap((part, index) => breakpointOf(context, parts[index], part, index)),
  ];
}

/** The curvatures of the sheet in order of position, and the reading of each; null where some have several. */
const fittedTo = oncePerContext((context: Context) => {
  const { positionsM } = placesOf(context);
  const taken: Taken[] = [];
  const atM: number[] = [];
  const readings: string[] = [];
  stationCurvatures(context).forEach((each, index) => {
    if (each === null) return;
    taken.push(each);
    atM.push(positionsM[index]!);
    if (each.readings.length === 1) readings.push(each.readings[0]);
  });
  return { taken, atM, readings: readings.length === taken.length ? readings : null };
});

/** The readings that parts next to each other were fitted to, as one value. */
function fitted(context: Context, parts: readonly LinePart[], value: number, u: number): Taken | null {
  const { taken, atM, readings } = fittedTo(context);
  const begin = bisectLeft(atM, parts[0]?.fromM ?? NaN);
  const end = bisectRight(atM, parts.at(-1)?.toM ?? NaN);
  const [first, ...others] = taken.slice(begin, end);
  if (first === undefined) return null;
  const remarks = new Set(first.remarks);
  for (const each of others) for (const remark of each.remarks) remarks.add(remark);
  return {
    value,
    u,
    readings:
      // One of each station is of that station alone, and need not be looked for among the others.
      readings === null
        ? readingsOf(first, ...others)
        : [first.readings[0], ...readings.slice(begin + 1, end)],
    remarks: [...remarks],
  };
}

function curvatureOf(context: Context, part: LinePart, index: number): readonly Finding[] {
  const taken = fitted(context, [part], part.curvaturePerM, part.uPerM);
  if (taken === null) return [];
  const heading: Heading = {
    ...HEADING,
    what: 'linePart',
    slot: String(index + 1),
    title: `Curvature of part ${index + 1} of the line, ${PART_WORDS[part.kind]}`,
    remarks: [
      `From ${along(part.fromM)} to ${along(part.toM)} from the POD: ${along(part.toM - part.fromM)} long, ${part.used} stations.`,
      ...(part.kind === 'transition'
        ? [
            `The mean of the part: from ${curvatureText(part.curvatureFromPerM)} to ${curvatureText(part.curvatureToPerM)}.`,
          ]
        : []),
    ],
  };
  return [measured(heading, 'curvature', taken)];
}

function breakpointOf(
  context: Context,
  before: LinePart | undefined,
  after: LinePart,
  index: number,
): readonly Finding[] {
  const u = after.uFromM;
  const taken =
    before === undefined || u === null || !Number.isFinite(u)
      ? null
      : fitted(context, [before, after], after.fromM, u);
  if (taken === null || before === undefined) return [];
  return [
    measured(
      {
        ...HEADING,
        what: 'lineBreak',
        slot: String(index + 1),
        title: `Where part ${index + 1} of the line (${PART_WORDS[before.kind]}) meets part ${index + 2} (${PART_WORDS[after.kind]})`,
        remarks: ['From the POD, negative before it.'],
      },
      'alongTrack',
      taken,
    ),
  ];
}
