import type { LoadedCase } from '~/app/case.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingView, type FindingView } from '~/app/findings/view.server';
import { pageOf, type Paged } from '~/app/paging';
import { chosenOf } from '~/app/subjects/chosen';
import { PART_FORMS } from '~/app/subjects/forms';
import { subjectPart, type SubjectPart } from '~/app/subjects/part.server';
import { subjectRows, type SubjectRow } from '~/app/subjects/rows.server';
import type { Actor } from '~/db/actor';
import type { Entity } from '~/lib/case/record';
import { beyondLimits } from './beyond.server';
import { wheelClockSvg } from './clock.server';
import { TRUCK_COLUMNS, WHEELSET_COLUMNS } from './columns';
import { inTrainOrder } from './order.server';
import { wearPictures, type WearPicture } from './wear.server';

const ON_A_PAGE = 12;

export type WheelRow = SubjectRow & { readonly beyond: number };

export type WheelsView = {
  readonly wheelsets: Paged<WheelRow>;
  readonly trucks: Paged<WheelRow>;
  readonly part: SubjectPart | null;
  /** Of the wheelset shown. */
  readonly defects: readonly SubjectPart[];
  /** Back-to-back round the wheelset shown, as SVG, while that group is open. */
  readonly clock: string | null;
  /** Of the wheelset shown. */
  readonly wear: readonly WearPicture[];
  /** What the trucks of the vehicle give together. */
  readonly ofVehicle: readonly FindingView[];
};

function rows(
  loaded: LoadedCase,
  kind: 'wheelset' | 'truck',
  columns: readonly { readonly id: string }[],
  page: string | null,
): Paged<WheelRow> {
  const beyond = beyondLimits(loaded);
  const paged = pageOf(subjectRows(loaded, kind, columns, inTrainOrder(loaded)), page, ON_A_PAGE);
  return { ...paged, items: paged.items.map((row) => ({ ...row, beyond: beyond.get(row.id) ?? 0 })) };
}

type Shown = Omit<WheelsView, 'wheelsets' | 'trucks'>;

function wheelsetShown(loaded: LoadedCase, wheelset: Entity, group: string | null, actor: Actor): Shown {
  const wanted = { forms: PART_FORMS.wheelset, group, named: ['vehicle', 'axle'] };
  const part = subjectPart(loaded, 'wheelset', wheelset, wanted, actor);
  const size = { forms: PART_FORMS.wheelDefect, named: ['wheelset', 'side', 'type'] };
  return {
    part,
    defects: loaded.record.entities.wheelDefect
      .filter(({ fields, removed }) => removed === null && fields.wheelset === wheelset.id)
      .map((defect) => subjectPart(loaded, 'wheelDefect', defect, size, actor)),
    clock: part.open.readings.groups.includes('backToBack')
      ? wheelClockSvg(loaded, wheelset.id, part.name)
      : null,
    wear: wearPictures(loaded, wheelset),
    ofVehicle: [],
  };
}

function truckShown(loaded: LoadedCase, truck: Entity, actor: Actor): Shown {
  const wanted = { forms: PART_FORMS.truck, named: ['vehicle', 'end'] };
  return {
    part: subjectPart(loaded, 'truck', truck, wanted, actor),
    defects: [],
    clock: null,
    wear: [],
    ofVehicle: caseFindings(loaded)
      .filter(({ part, subject }) => part === 'wheels' && subject?.id === truck.fields.vehicle)
      .map((finding) => findingView(loaded, finding)),
  };
}

const NOTHING: Shown = { part: null, defects: [], clock: null, wear: [], ofVehicle: [] };

/** Wheelsets and trucks as lists, and the one of them that the address names, in full. */
export function wheelsView(loaded: LoadedCase, asked: URLSearchParams, actor: Actor): WheelsView {
  const { wheelset: wheelsets, truck: trucks } = loaded.record.entities;
  const lists = {
    wheelsets: rows(loaded, 'wheelset', WHEELSET_COLUMNS, asked.get('page')),
    trucks: rows(loaded, 'truck', TRUCK_COLUMNS, asked.get('trucks')),
  };
  const first = lists.wheelsets.items[0]?.id ?? null;
  const wheelset = asked.has('truck') ? null : chosenOf(wheelsets, asked.get('wheelset') ?? first);
  const truck = wheelset ? null : chosenOf(trucks, asked.get('truck'));
  const shown = wheelset
    ? wheelsetShown(loaded, wheelset, asked.get('group'), actor)
    : truck
      ? truckShown(loaded, truck, actor)
      : NOTHING;
  return { ...lists, ...shown };
}
