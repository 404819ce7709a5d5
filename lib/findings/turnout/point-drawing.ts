import { nameOfEntity } from '../../case/name-of';
import type { Outline } from '../../outline/outline';
import { probabilityBelow } from '../../readings/propagate';
import { standingOutlines } from '../../turnout/against-stock-rail';
import type { FlangeAtRail } from '../../turnout/flange-at-rail';
import { clearances, type Clearance, type PointFit } from '../../turnout/point-fit';
import { pointOutline } from '../../turnout/point-outline';
import type { Context } from '../context';
import { distinct } from '../build';
import type { Side } from '../pod-sides';
import { atPoint, missDrawn, nominalFit, nominalFlange, type AtPoint, type Stance } from './at-point';
import { behindTip } from './behind-tip';
import { facingTurnouts, pointPlace } from './near-pod';
import type { PlaceOnPoint } from './places-on-point';

/** How the flange misses the point at one place, in one stance: what its finding says, and every height. */
export type DrawnFit = {
  /** As in the findings: over the top where the flange does not reach, else to the side. */
  readonly missMm: number;
  readonly uMm: number;
  readonly probabilityNegative: number;
  readonly fit: PointFit;
  readonly clearances: readonly Clearance[];
};

export type DrawnPlace = {
  readonly id: PlaceOnPoint['id'];
  readonly behindMm: number;
  /** As the place is called on its readings: "1 ft"; '' for tip and chip. */
  readonly label: string;
  /** Top of the point below the top of the stock rail. */
  readonly topMm: number;
  readonly point: Outline;
  readonly square: DrawnFit;
  readonly yawed: DrawnFit;
  readonly remarks: readonly string[];
};

/** What is drawn of one facing point. Lines in the frame of `FlangeAtRail`, mm. */
export type PointDrawing = {
  readonly name: string;
  /** Of the track, looking in the direction of travel. */
  readonly side: Side;
  /** Wheel and stock rail as they stand; null where only simple readings were used. */
  readonly outlines: { readonly wheel: Outline; readonly rail: Outline } | null;
  readonly square: FlangeAtRail;
  readonly yawed: FlangeAtRail;
  /** From the tip back. */
  readonly places: readonly DrawnPlace[];
  /** What wheel, stock rail and point were taken from, and where the turnout lies. */
  readonly remarks: readonly string[];
};

/** The drawn part of a point goes this far below the tip of the flange, mm. */
const BELOW_FLANGE_MM = 20;

/**
 * What the clearances of a facing point were computed from, for drawing it: the same fits and draws as its
 * findings. Null where the turnout is not facing, or where wheel or tip were not read.
 */
export function pointDrawing(context: Context, turnoutId: string): PointDrawing | null {
  const turnout = facingTurnouts(context).find(({ id }) => id === turnoutId);
  if (turnout === undefined) return null;
  const at = atPoint(context, turnout);
  if ('missing' in at) return null;
  const { outlines, side } = at.wheel;
  const flanges = { square: nominalFlange(at, 'square'), yawed: nominalFlange(at, 'yawed') };
  const downToMm = flanges.square.tipDepthMm + BELOW_FLANGE_MM;
  return {
    name: nameOfEntity(context.record, 'turnout', turnout),
    side,
    outlines: outlines && standingOutlines(outlines.wheel, outlines.rail, outlines.stands),
    ...flanges,
    places: [...at.places, ...at.behind]
      .sort((a, b) => a.behindMm - b.behindMm)
      .map((place) => drawnPlace(at, place, flanges, downToMm)),
    remarks: distinct([...at.remarks, pointPlace(context, turnout).remark]),
  };
}

function drawnPlace(
  at: AtPoint,
  place: PlaceOnPoint,
  flanges: Readonly<Record<Stance, FlangeAtRail>>,
  downToMm: number,
): DrawnPlace {
  const section = place.section(
    place.inputs.map(({ value }) => value),
    0,
  );
  const inStance = (stance: Stance): DrawnFit => {
    const { taken, draws } = missDrawn(at, [place], stance);
    return {
      missMm: taken.value,
      uMm: taken.u,
      probabilityNegative: probabilityBelow(draws, 0),
      fit: nominalFit(at, place, stance),
      clearances: clearances(flanges[stance], section, at.faceRad),
    };
  };
  return {
    id: place.id,
    behindMm: place.behindMm,
    label: place.id === 'behind' ? behindTip(place.behindMm).label : '',
    topMm: section.depthMm,
    point: pointOutline(section, at.faceRad, downToMm),
    square: inStance('square'),
    yawed: inStance('yawed'),
    remarks: place.remarks.filter((remark) => remark !== ''),
  };
}
