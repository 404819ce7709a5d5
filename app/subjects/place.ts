import { SCREEN_OF } from '~/app/entities/screen-of';
import type { SubjectRef } from '~/lib/case/record';
import type { SubjectKind } from '~/lib/readings/quantity';

/** Kinds that a screen shows one of at a time, by the name of the kind in the address. */
const SHOWN_ONE_AT_A_TIME: ReadonlySet<SubjectKind> = new Set([
  'vehicle',
  'lineStretch',
  'mark',
  'wheelset',
  'truck',
  'rail',
  'turnout',
]);

/** Where a thing of the case is shown. */
export function placeOf(caseId: string, { kind, id }: SubjectRef): string {
  if (kind === 'case') return `/cases/${caseId}/scene`;
  return SHOWN_ONE_AT_A_TIME.has(kind)
    ? `/cases/${caseId}/${SCREEN_OF[kind]}?${kind}=${id}`
    : `/cases/${caseId}/records/${kind}/${id}`;
}
