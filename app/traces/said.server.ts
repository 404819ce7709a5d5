import { readSharedEntry } from '~/app/readings/shared-entry';
import { systemOf } from '~/app/readings/take.server';
import type { Actor } from '~/db/actor';
import type { CaseRecord } from '~/lib/case/record';
import type { Trace, TracedShape } from '~/lib/case/trace';
import { fromCanonical } from '~/lib/readings/convert';
import { uncertaintyOfInstrument } from '~/lib/readings/instrument';
import { parseWidth } from '~/lib/readings/parse-width';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import { behindEntered } from '~/lib/turnout/behind-entered';
import { SAID_BOXES, type SaidBoxes } from './said';

/** What is said of an outline beside the line itself. */
export type Said = Pick<
  Trace,
  'personId' | 'instrumentId' | 'takenAt' | 'disturbance' | 'note' | 'distanceRunKm' | 'mirrored'
>;

const M_PER_KM = 1000;
const bareUnit: Readonly<Record<UnitSystem, 'mi' | 'km'>> = { us: 'mi', metric: 'km' };

/** Distance run as typed, such as 85,000 or 85000 mi, in km; null when nothing was typed. */
export function distanceRun(text: string, system: UnitSystem): Result<number | null> {
  const typed = text.trim();
  if (typed === '') return ok(null);
  const plain = typed.replace(/[\s,](?=\d{3}(\D|$))/g, '');
  const withUnit = /[a-z]/i.test(plain) ? plain : `${plain} ${bareUnit[system]}`;
  if (/^0+(\.0+)?\s/.test(withUnit)) return ok(0);
  const metres = parseWidth(withUnit, 'alongTrack');
  return metres.ok
    ? ok(metres.value / M_PER_KM)
    : refuse('Enter the distance run in miles or kilometres, such as 85,000 mi, or leave it empty.');
}

/** Distance run as it is shown and typed again. */
export function distanceText(km: number | null, system: UnitSystem): string {
  if (km === null) return '';
  const unit = bareUnit[system];
  return `${Math.round(fromCanonical(km * M_PER_KM, unit, 'alongTrack'))} ${unit}`;
}

/** Reads the part of a form that says who, when, with what and in which state. */
export function readSaid(
  form: FormData,
  record: CaseRecord,
): { readonly said: Said; readonly errors: Readonly<Record<string, string>> } {
  const { entry, errors } = readSharedEntry(form, record);
  const distance = distanceRun(String(form.get('distance') ?? ''), systemOf(record.fields));
  const { personId, instrumentId, takenAt, disturbance, note } = entry;
  return {
    said: {
      personId,
      instrumentId,
      takenAt,
      disturbance,
      note,
      distanceRunKm: distance.ok ? distance.value : null,
      mirrored: form.get('mirrored') !== null,
    },
    errors: distance.ok ? errors : { ...errors, distance: distance.message },
  };
}

/** What is said once, while an outline is brought in, with where on a point it lies; null of anything else. */
export type NewSaid = Said & { readonly behind: { readonly entered: string; readonly mm: number } | null };

/** As `readSaid`, for an outline that is being brought in. */
export function readNewSaid(
  form: FormData,
  record: CaseRecord,
  shape: TracedShape,
): { readonly said: NewSaid; readonly errors: Readonly<Record<string, string>> } {
  const { said, errors } = readSaid(form, record);
  if (shape !== 'point') return { said: { ...said, behind: null }, errors };
  const entered = String(form.get('behind') ?? '').trim();
  const mm = behindEntered(entered);
  return mm.ok
    ? { said: { ...said, behind: { entered, mm: mm.value } }, errors }
    : { said: { ...said, behind: null }, errors: { ...errors, behind: mm.message } };
}

type Source = { readonly get: (name: string) => unknown };

/** The boxes as they were sent, so that nothing typed is lost. */
export const sentBoxes = (sent: Source): SaidBoxes =>
  Object.fromEntries(SAID_BOXES.map((box) => [box, String(sent.get(box) ?? '').slice(0, 1000)])) as SaidBoxes;

/** The boxes for an outline that is kept. */
export const boxesOfTrace = (trace: Trace, record: CaseRecord): SaidBoxes => ({
  person: trace.personId ?? '',
  instrument: trace.instrumentId ?? '',
  takenAt: trace.takenAt?.slice(0, 16) ?? '',
  justNow: '',
  disturbance: trace.disturbance,
  note: trace.note,
  distance: distanceText(trace.distanceRunKm, systemOf(record.fields)),
  mirrored: trace.mirrored ? 'on' : '',
  plumb: trace.making.plumb ? 'on' : '',
  behind: trace.making.behindEntered ?? '',
});

/** Standard uncertainty across the line that the named instrument gives, mm; null when none is named or known. */
export function instrumentMm(record: CaseRecord, id: string | null): number | null {
  const instrument = record.entities.instrument.find((each) => each.id === id);
  return instrument ? uncertaintyOfInstrument('crossLength', instrument) : null;
}

/** The boxes before anybody entered anything. */
export const firstBoxes = (actor: Actor): SaidBoxes => ({
  person: actor.personId ?? '',
  instrument: '',
  takenAt: '',
  justNow: '',
  disturbance: 'notSaid',
  note: '',
  distance: '',
  mirrored: '',
  plumb: '',
  behind: '',
});
