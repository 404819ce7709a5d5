import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { BEHIND_TIP } from '../../readings/quantities/turnout';
import { feet } from '../../readings/quantities/build';
import { pointTraceMethod } from '../../turnout/point-trace';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';
import { across, degreesText } from '../words';
import { outlinesOfPoint, sectionsTraced, tracedOnce, type OutlineOfPoint } from './outlines-of-point';
import { placesRead, pointRead, type PlaceRead, type SectionTaken } from './point-readings';

const MM = 1000;

/** What each traced cross-section of a point gives, or what is to be read before it can judge anything. */
export const pointOutlineFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'turnout').flatMap((turnout) => ofTurnout(context, turnout));

const whereText = (behindMm: number): string =>
  behindMm === 0 ? 'at the tip' : `${across(behindMm)} behind the tip`;

function ofTurnout(context: Context, turnout: Entity): readonly Finding[] {
  const traced = sectionsTraced(context, turnout);
  if (traced.length === 0) return [];
  const { placed } = pointRead(context, turnout);
  const outlines = outlinesOfPoint(context, turnout);
  const places = placesRead(context, turnout);
  return traced.map(({ behindMm, trace, leftOut }): Finding => {
    const heading = (remarks: readonly string[] = []): Heading => ({
      part: 'turnout',
      method: pointTraceMethod,
      what: 'pointOutline',
      title: `Thickness of the point from its outline, ${whereText(behindMm)}`,
      subject: { kind: 'turnout', id: turnout.id },
      slot: `mm${Math.round(behindMm)}`,
      remarks: distinct(remarks),
    });
    if (trace === null) {
      return notMeasured(heading(), [
        `an outline of it undisturbed; traced only ${distinct(leftOut.map((why) => LEFT_OUT_WORDS[why])).join(' and ')}`,
      ]);
    }
    const outline = outlines.find((each) => each.trace === trace);
    if (outline === undefined) {
      const point = tracedOnce(trace);
      return notMeasured(heading(), [
        `an outline that can be laid: ${point.ok ? 'this one cannot' : point.message}`,
      ]);
    }
    const section = placed.find((each) => each.outline.trace === trace)?.section;
    return section === undefined
      ? notMeasured(
          heading([
            `The outline is ${across(outline.thickness.value)} thick; without gap and depth there it is not known where it stands, and it judges nothing.`,
          ]),
          toRead(places, behindMm),
        )
      : measured(heading(remarksOf(outline, section, places)), 'crossLength', outline.thickness);
  });
}

function remarksOf(
  { point, behindMm, thickness }: OutlineOfPoint,
  section: SectionTaken,
  places: readonly PlaceRead[],
): readonly string[] {
  const { pointSideSlope: slope } = point.features;
  const read = places.find((place) => place.behindMm === section.behindMm)?.thickness ?? null;
  return [
    ...point.remarks,
    slope.ok ? `Its gauge side slopes at ${degreesText(slope.value.value)} to 5/8 in below its top.` : '',
    section.behindMm === behindMm
      ? ''
      : `It stands for the place read ${whereText(section.behindMm)}, less than 1 in away.`,
    read === null
      ? ''
      : `Both traced and read: ${across(read.value)} read; the outline is taken for the fit.`,
    read !== null && Math.abs(read.value - thickness.value) > 2 * Math.hypot(read.u, thickness.u)
      ? 'The two differ by more than the uncertainties of both allow (k = 2): find out which of them errs.'
      : '',
  ];
}

/** The readings that would place an outline: gap and depth at its distance, or at the places on either side of it. */
function toRead(places: readonly PlaceRead[], behindMm: number): readonly string[] {
  const last = places.at(-1)?.behindMm ?? 0;
  const before = places.filter((place) => place.behindMm <= behindMm).at(-1);
  const after = places.find((place) => place.behindMm >= behindMm);
  if (before === undefined || after === undefined) {
    return [
      `an outline not more than ${across(last)} behind the tip, as far back as gap and depth can be read`,
    ];
  }
  return distinct(
    [before, after].flatMap(({ behindMm: at, gap, depth }) => [
      gap === null ? `gap between point and stock rail ${placeText(at)}` : '',
      depth === null ? `depth of the point below the stock rail ${placeText(at)}` : '',
    ]),
  );
}

const placeText = (behindMm: number): string => {
  const slot = BEHIND_TIP.find(({ feet: behind }) => feet(behind) * MM === behindMm);
  return slot === undefined ? 'at the tip' : `${slot.label} behind the tip`;
};
