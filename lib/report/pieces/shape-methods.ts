import type { CaseRecord } from '../../case/record';
import type { Method } from '../../findings/finding';
import { railTraceMethod } from '../../rail/trace-features';
import { wheelTraceMethod } from '../../wheel/trace-features';
import { pointTraceMethod } from '../../turnout/point-trace';
import { wearHistoryMethod } from '../../wheel/wear-history';
import { CONTACT_METHODS } from './contact-drawings';

/** Methods behind the section on shapes: of what was traced, none without traces. */
export function shapeMethods({ traces }: CaseRecord): readonly Method[] {
  const standing = traces.filter(({ removed }) => removed === null);
  const wheels = standing.some(({ shape }) => shape === 'wheel');
  const points = standing.some(({ shape }) => shape === 'point');
  const rails = standing.some(({ shape }) => shape === 'rail');
  return [
    ...(wheels ? [wheelTraceMethod] : []),
    ...(rails ? [railTraceMethod] : []),
    ...(points ? [pointTraceMethod] : []),
    ...(wheels && rails ? CONTACT_METHODS : []),
    ...(standing.some(({ shape, distanceRunKm }) => shape === 'wheel' && distanceRunKm !== null)
      ? [wearHistoryMethod]
      : []),
  ];
}
