import type { CaseRecord } from '../case/record';
import type { Trace } from '../case/trace';
import type { Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { placed } from '../outline/placing';
import { registerRail } from '../rail/register';
import { ok, type Result } from '../readings/result';
import { registerWheel } from '../wheel/register';
import { shapeOfSection } from './index';
import { wholeOutline } from './whole-outline';

/** The new section of the rail a trace is of; null for a wheel, or when its section has no shape here. */
export function newSectionOf(record: CaseRecord, trace: Trace): Outline | null {
  if (trace.shape !== 'rail') return null;
  const rail = record.entities.rail.find(({ id }) => id === trace.subject.id);
  const shape = shapeOfSection(String(rail?.fields.section ?? ''));
  return shape && wholeOutline(shape);
}

/**
 * A traced outline in the frame of its shape, moved by hand where somebody did. Refuses what
 * registration refuses, with what to do.
 */
export function tracedOutline(record: CaseRecord, trace: Trace): Result<Outline> {
  const known = placedBefore.get(trace);
  if (known !== undefined) return known;
  const outline = placeTrace(record, trace);
  placedBefore.set(trace, outline);
  return outline;
}

/** Placing a rail takes a good part of a second; a trace of a record never changes. */
const placedBefore = new WeakMap<Trace, Result<Outline>>();

function placeTrace(record: CaseRecord, trace: Trace): Result<Outline> {
  const line = outlineOfPairs(trace.pointsMm);
  if (trace.shape === 'rail') {
    const rail = registerRail(line, {
      mirrored: trace.mirrored,
      reference: newSectionOf(record, trace),
      hand: trace.hand,
    });
    return rail.ok ? ok(rail.value.outline) : rail;
  }
  const wheel = registerWheel(line, trace);
  if (!wheel.ok) return wheel;
  const { outline } = wheel.value;
  return ok(trace.hand === null ? outline : placed(outline, { mirrored: false, ...trace.hand }));
}
