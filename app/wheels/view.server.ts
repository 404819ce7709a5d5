import type { LoadedCase } from '~/app/case.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingView, type FindingView } from '~/app/findings/view.server';
import { pageOf, type Paged } from '~/app/paging';
import { chosenOf } from '~/app/subjects/chosen';
import { subjectPart, type SubjectPart } from '~/app/subjects/part.server';
import { subjectRows, type SubjectRow } from '~/app/subjects/rows.server';
import type { Actor } from '~/db/actor';
import { beyondLimits } from './beyond.server';
import { TRUCK_COLUMNS, WHEELSET_COLUMNS } from './columns';
import { inTrainOrder } from './order.server';

const WHEELSET_FORMS = [
  { group: 'backToBack', findings: ['backToBackMean', 'backToBackLeast', 'backToBackSwing'] },
  {
    group: 'wheelShape',
    findings: [
      'flangeThickness',
      'flangeHeight',
      'flangeAngle',
      'climbLength',
      'rimThickness',
      'rimWidth',
      'treadHollow',
    ],
  },
  { group: 'wheelDiameter', findings: ['wheelDiameter', 'diameterDifference'] },
  {
    group: 'wheelChecks',
    findings: ['flangeThicknessCheck', 'flangeHeightCheck', 'rimThicknessCheck', 'hollowCheck'],
  },
] as const;

const TRUCK_FORMS = [
  { group: 'sideBearings', findings: ['sideBearingClearance', 'sideBearingClearanceEnd', 'wedgeRise'] },
] as const;

const DEFECT_FORMS = [{ group: 'wheelDefectSize', findings: ['defectLength', 'defectWidth'] }] as const;

const ON_A_PAGE = 12;

export type WheelRow = SubjectRow & { readonly beyond: number };

export type WheelsView = {
  readonly wheelsets: Paged<WheelRow>;
  readonly trucks: Paged<WheelRow>;
  readonly part: SubjectPart | null;
  /** Of the wheelset shown. */
  readonly defects: readonly SubjectPart[];
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

/** Wheelsets and trucks as lists, and the one of them that the address names, in full. */
export function wheelsView(loaded: LoadedCase, asked: URLSearchParams, actor: Actor): WheelsView {
  const { record } = loaded;
  const wheelsets = rows(loaded, 'wheelset', WHEELSET_COLUMNS, asked.get('page'));
  const trucks = rows(loaded, 'truck', TRUCK_COLUMNS, asked.get('trucks'));
  const lists = { wheelsets, trucks };
  const truckId = asked.get('truck');
  const first = wheelsets.items[0]?.id ?? null;
  const wheelset =
    truckId === null ? chosenOf(record.entities.wheelset, asked.get('wheelset') ?? first) : null;
  if (wheelset) {
    return {
      ...lists,
      part: subjectPart(
        loaded,
        'wheelset',
        wheelset,
        { forms: WHEELSET_FORMS, group: asked.get('group'), named: ['vehicle', 'axle'] },
        actor,
      ),
      defects: record.entities.wheelDefect
        .filter(({ fields, removed }) => removed === null && fields.wheelset === wheelset.id)
        .map((defect) =>
          subjectPart(
            loaded,
            'wheelDefect',
            defect,
            { forms: DEFECT_FORMS, named: ['wheelset', 'side', 'type'] },
            actor,
          ),
        ),
      ofVehicle: [],
    };
  }
  const truck = chosenOf(record.entities.truck, truckId);
  return {
    ...lists,
    part:
      truck && subjectPart(loaded, 'truck', truck, { forms: TRUCK_FORMS, named: ['vehicle', 'end'] }, actor),
    defects: [],
    ofVehicle: caseFindings(loaded)
      .filter(({ part, subject }) => part === 'wheels' && subject?.id === truck?.fields.vehicle)
      .map((finding) => findingView(loaded, finding)),
  };
}
