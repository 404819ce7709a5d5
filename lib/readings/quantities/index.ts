import type { Quantity, QuantityGroup, ScreenId, SubjectKind } from '../quantity';
import { conditionsGroup, curveDesignGroup } from './case';
import { curveElevationGroup } from './curve-elevation';
import { exceptedTrackGroup } from './excepted-track';
import { markExtentGroup } from './mark';
import {
  markObservations,
  railObservations,
  trackObservations,
  trainObservations,
  turnoutObservations,
  wheelObservations,
} from './observations';
import { railFrictionGroup, railHoldGroup, railWearGroup } from './rail';
import { sheetReadingGroup } from './sheet';
import {
  gaugeGroup,
  jointsGroup,
  movementGroup,
  stationPositionGroup,
  stationRailGroup,
  stringLineGroup,
  tiesGroup,
} from './station';
import { lineProfileGroup } from './line-profile';
import { ladingGroup, locomotiveGroup, podPlacingGroup, trainTrackGroup, vehicleTrackGroup } from './train';
import { sideBearingGroup } from './truck';
import { alongPointGroup, frogAndGuardGroup, pointFitGroup, switchStateGroup } from './turnout';
import { frogConditionGroup, turnoutConditionGroup } from './turnout-condition';
import { vehicleGroup } from './vehicle';
import {
  backToBackGroup,
  diameterGroup,
  wheelCheckGroup,
  wheelDefectGroup,
  wheelShapeGroup,
} from './wheelset';

/** Everything that can be read, in the order of the screens. */
export const GROUPS: readonly QuantityGroup[] = [
  conditionsGroup,
  vehicleGroup,
  ladingGroup,
  vehicleTrackGroup,
  locomotiveGroup,
  podPlacingGroup,
  trainTrackGroup,
  lineProfileGroup,
  trainObservations,
  markExtentGroup,
  markObservations,
  curveDesignGroup,
  curveElevationGroup,
  exceptedTrackGroup,
  sheetReadingGroup,
  stationPositionGroup,
  gaugeGroup,
  stringLineGroup,
  movementGroup,
  tiesGroup,
  jointsGroup,
  stationRailGroup,
  trackObservations,
  backToBackGroup,
  wheelShapeGroup,
  diameterGroup,
  wheelCheckGroup,
  wheelDefectGroup,
  sideBearingGroup,
  wheelObservations,
  railWearGroup,
  railFrictionGroup,
  railHoldGroup,
  railObservations,
  pointFitGroup,
  alongPointGroup,
  switchStateGroup,
  turnoutConditionGroup,
  frogAndGuardGroup,
  frogConditionGroup,
  turnoutObservations,
];

const byId = new Map<string, Quantity>(
  GROUPS.flatMap((group) => group.quantities.map((q) => [q.id, q] as const)),
);

/** The catalogue's entry, or undefined for an id it does not know. */
export const findQuantity = (id: string): Quantity | undefined => byId.get(id);

/** The catalogue's entry. Throws on an unknown id: ids in code are known. */
export function quantityOf(id: string): Quantity {
  const quantity = byId.get(id);
  if (quantity === undefined) throw new Error(`No quantity is called ${id}`);
  return quantity;
}

export const groupsFor = (screen: ScreenId, subject?: SubjectKind): readonly QuantityGroup[] =>
  GROUPS.filter((group) => group.screen === screen && (subject === undefined || group.subject === subject));
