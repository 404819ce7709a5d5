import type { Entity } from '../../case/record';
import type { Trace } from '../../case/trace';
import type { Outline } from '../../outline/outline';
import { shapeOfSection } from '../../shapes';
import { tracedOutline } from '../../shapes/traced-outline';
import { wholeOutline } from '../../shapes/whole-outline';
import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import type { Context } from '../context';
import type { Side } from '../pod-sides';
import { placeRemark, railsNearPod } from '../rail-place';

/** The outline a flange is stood against at a point. */
export type StockRail = {
  readonly outline: Outline;
  /** Of its gauge side, standard uncertainty. */
  readonly uMm: number;
  /** Null where the new shape of its section stands for it. */
  readonly trace: Trace | null;
  readonly section: string;
  readonly remark: string;
};

/** Wear of a stock rail nobody traced: a face up to 3 mm worn, taken with its section's new shape. */
const U_UNWORN_MM = 1;

type Candidate = { readonly rail: Entity; readonly remark: string };

/**
 * The stock rail of a turnout on one side: a rail said to be it, by its outline or else the shape of its
 * section; where none is said to be it, the rail nearest the POD that has an outline, else the first with a
 * section that has a shape. Rails said to be the stock rail of another turnout come last.
 */
export function stockRail(context: Context, side: Side, turnout: Entity): StockRail | null {
  const near = railsNearPod(context, side);
  const said: Candidate[] = [];
  const free: Candidate[] = [];
  const ofOthers: Candidate[] = [];
  for (const placed of near) {
    const { entity: rail } = placed;
    const of = rail.fields.stockRailOf ?? null;
    if (of === turnout.id) said.push({ rail, remark: 'The rail said to be the stock rail of this turnout.' });
    else {
      const other = standing(context.record, 'turnout').find(({ id }) => id === of);
      const taken =
        other === undefined
          ? ''
          : ` It is said to be the stock rail of ${nameOfEntity(context.record, 'turnout', other)}.`;
      (other === undefined ? free : ofOthers).push({
        rail,
        remark: `No rail is said to be the stock rail of this turnout: the nearest to the POD is taken. ${placeRemark(placed)}${taken}`,
      });
    }
  }
  return (
    fromOutline(context, said) ??
    fromSection(said) ??
    fromOutline(context, [...free, ...ofOthers]) ??
    fromSection([...free, ...ofOthers])
  );
}

function fromOutline(context: Context, candidates: readonly Candidate[]): StockRail | null {
  for (const { rail, remark } of candidates) {
    const trace = context.traces.undisturbed({ kind: 'rail', id: rail.id, slot: '' }).at(-1);
    const outline = trace && tracedOutline(context.record, trace);
    if (trace === undefined || !outline?.ok) continue;
    return {
      outline: outline.value,
      uMm: trace.uncertainty.acrossMm,
      trace,
      section: String(rail.fields.section ?? ''),
      remark: `Stock rail from the outline of a rail. ${remark}`,
    };
  }
  return null;
}

function fromSection(candidates: readonly Candidate[]): StockRail | null {
  for (const { rail, remark } of candidates) {
    const section = String(rail.fields.section ?? '');
    const shape = shapeOfSection(section);
    if (shape === null) continue;
    return {
      outline: wholeOutline(shape),
      uMm: U_UNWORN_MM,
      trace: null,
      section,
      remark: `No outline of the stock rail: the new shape of ${section} is taken, its gauge side uncertain by 1 mm. ${remark}`,
    };
  }
  return null;
}
