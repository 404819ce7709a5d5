import type { Entity } from '../../case/record';
import { pointClearanceMethod } from '../../mechanics/point-clearance';
import { formatWithUncertainty } from '../../readings/format';
import { probabilityBelow } from '../../readings/propagate';
import { firstTouch } from '../../turnout/first-touch';
import {
  CLOSE_MM,
  couldBeStruck,
  missMm,
  pointFitMethod,
  SHALLOW_RAD,
  type PointFit,
} from '../../turnout/point-fit';
import { yawMethod } from '../../turnout/yawed';
import { distinct, measured, notMeasured, outOfRange, type Heading } from '../build';
import type { Context } from '../context';
import { draw, notBelowZero } from '../draw';
import type { Finding, Method, Source } from '../finding';
import type { Taken } from '../reading-index';
import { across, degreesText, percent } from '../words';
import { atPoint, missDrawn, nominalFit, ROLLING_RADIUS_MM, shareOfDraws, type AtPoint } from './at-point';
import { behindTip } from './behind-tip';
import { facingTurnouts, pointPlace } from './near-pod';
import type { PlaceOnPoint } from './places-on-point';
import { sectionDrawn } from './point-readings';

const CLEAR: Source = { text: 'Clearance of zero: the flange touches the edge', status: 'published' };

const TITLES: Readonly<Record<PlaceOnPoint['id'], readonly [what: string, title: string]>> = {
  tip: ['pointClearanceTip', 'Clearance of the flange to the tip of the point'],
  chipFloor: ['pointClearanceChip', 'Clearance of the flange to the floor of the chip'],
  chipEnd: ['pointClearanceChipEnd', 'Clearance of the flange to the point where the chip ends'],
  behind: ['pointClearanceBehind', 'Clearance of the flange to the point'],
};
const LEAST = ['pointClearanceLeast', 'Smallest clearance of the flange to tip or chip'] as const;
const YAWED = [
  'pointClearanceYawed',
  'Smallest clearance to tip or chip at an angle of attack of 10 mrad',
] as const;
const TOUCH = ['pointFirstTouch', 'First touch of the flange behind the tip'] as const;

type Named = readonly [what: string, title: string];

/** What is known at one facing point, and how its findings are headed. */
type At = AtPoint & {
  readonly heading: (named: Named, method: Method, remarks?: readonly string[], slot?: string) => Heading;
};

/**
 * The first derailed axle's flange beside every facing point: to the tip, to the floor and the end of a
 * chip, the smallest of these, the same at an angle of attack, to the point where it was read farther back,
 * and where the flange first touches it.
 */
export const pointClearanceFindings = (context: Context): readonly Finding[] =>
  facingTurnouts(context).flatMap((turnout) => ofTurnout(context, turnout));

function ofTurnout(context: Context, turnout: Entity): readonly Finding[] {
  const { remark } = pointPlace(context, turnout);
  const subject = { kind: 'turnout', id: turnout.id } as const;
  const known = atPoint(context, turnout);
  const heading: At['heading'] = ([what, title], method, remarks = [], slot = '') => ({
    part: 'turnout',
    method,
    what,
    title,
    subject,
    slot,
    remarks: distinct([remark, ...('missing' in known ? [] : known.remarks), ...remarks]),
  });
  if ('missing' in known) return [notMeasured(heading(TITLES.tip, pointFitMethod), known.missing)];
  const at: At = { ...known, heading };
  return [
    ...at.places.map((place) => placeFinding(at, place)),
    leastFinding(at),
    yawedFinding(at),
    ...at.behind.map((place) => behindFinding(at, place)),
    ...touchFinding(at),
  ];
}

const methodOf = ({ wheel, sections }: AtPoint): Method =>
  wheel.outlines === null && sections.every(({ side }) => side === undefined)
    ? pointClearanceMethod
    : pointFitMethod;

function placeFinding(at: At, place: PlaceOnPoint): Finding {
  const found = missDrawn(at, [place], 'square');
  const [, title] = TITLES[place.id];
  return measured(
    at.heading(TITLES[place.id], methodOf(at), [
      ...place.remarks,
      fitRemark(nominalFit(at, place, 'square')),
      yawedRemark(at, place),
    ]),
    'crossLength',
    found.taken,
    [notBelowZero(title.replace('Clearance of the flange to', 'Flange clear of'), found, CLEAR)],
  );
}

/**
 * Farther back there is no limit to hold the clearance against: the point has to guide the flange there.
 */
function behindFinding(at: At, place: PlaceOnPoint): Finding {
  const found = missDrawn(at, [place], 'square');
  const [what, title] = TITLES.behind;
  const { slot, label } = behindTip(place.behindMm);
  return measured(
    at.heading(
      [what, `${title} ${label} behind the tip`],
      methodOf(at),
      [
        ...place.remarks,
        fitRemark(nominalFit(at, place, 'square')),
        `In ${percent(probabilityBelow(found.draws, 0))} of the draws it is negative: the point stands outside the face of the flange. Where the point has become thick and the flange is steep, that is normal running: the point guides the wheel off the stock rail.`,
        yawedRemark(at, place),
      ],
      slot,
    ),
    'crossLength',
    found.taken,
  );
}

function yawedRemark(at: At, place: PlaceOnPoint): string {
  const { taken, draws } = missDrawn(at, [place], 'yawed');
  const [us, metric] = (['us', 'metric'] as const).map((system) =>
    formatWithUncertainty(taken.value, taken.u, 'crossLength', system).replace(' (k = 2)', ''),
  );
  return `At an angle of attack of 10 mrad: ${us} (${metric}), k = 2; negative in ${percent(probabilityBelow(draws, 0))} of the draws.`;
}

function leastFinding(at: At): Finding {
  const found = missDrawn(at, at.places, 'square');
  const nominal = at.places.map((place) => nominalFit(at, place, 'square'));
  const least = nominal.reduce((a, b, i) => (missMm(b) < missMm(nominal[a] ?? b) ? i : a), 0);
  const where = at.places[least];
  const struck = shareOfDraws(at, at.places, (fits) => fits.some(couldBeStruck));
  return measured(
    at.heading(LEAST, methodOf(at), [
      where === undefined ? '' : smallestRemark(where),
      `In ${percent(struck)} of the draws tip or chip could be struck or ridden: within reach, and outside the face or within ${across(CLOSE_MM)} of it where the flange is flatter than ${degreesText(SHALLOW_RAD)}.`,
    ]),
    'crossLength',
    found.taken,
    [notBelowZero('Flange clear of tip and chip', found, CLEAR)],
  );
}

const WHERE: Readonly<Record<PlaceOnPoint['id'], string>> = {
  tip: 'at the tip',
  chipFloor: 'at the floor of the chip',
  chipEnd: 'where the chip ends',
  behind: 'farther back',
};

const smallestRemark = ({ id, behindMm }: PlaceOnPoint): string =>
  behindMm === 0 ? `Smallest ${WHERE[id]}.` : `Smallest ${WHERE[id]}, ${across(behindMm)} behind the tip.`;

function yawedFinding(at: At): Finding {
  const found = missDrawn(at, at.places, 'yawed');
  return measured(
    at.heading(YAWED, yawMethod, [
      `Rolling radius taken as ${across(ROLLING_RADIUS_MM)}; little depends on it. 10 mrad: a truck that steers badly, engineering judgement.`,
    ]),
    'crossLength',
    found.taken,
    [notBelowZero('Flange clear of tip and chip', found, CLEAR)],
  );
}

/** Where the flange first meets the point; nothing when the point was read at its tip only. */
function touchFinding(at: At): readonly Finding[] {
  const { sections, chip, context, wheel, face } = at;
  const [first, ...more] = wheel.inputs;
  const last = sections.at(-1);
  if (last === undefined || last.behindMm === 0) return [];
  const inputs: readonly [Taken, ...Taken[]] = [
    first,
    ...more,
    ...sections.flatMap(({ gap, thickness, depth }) => [gap, thickness, depth]),
    ...(face.read === null ? [] : [face.read]),
  ];
  const from = wheel.inputs.length;
  const touch = (values: ArrayLike<number>) =>
    firstTouch(
      wheel.flange(values, 0),
      sections.map((section, i) => sectionDrawn(section, values, from + 3 * i)),
      chip?.chip ?? null,
      values[from + 3 * sections.length] ?? NaN,
    );
  const found = draw((values) => touch(values)?.behindMm ?? NaN, inputs, context.seed, face.assumed);
  const nominal = touch([...inputs.map(({ value }) => value), ...face.assumed.map(({ value }) => value)]);
  if (nominal === null) {
    return [
      outOfRange(
        at.heading(TOUCH, pointFitMethod),
        { ...found.taken, value: 0 },
        `a flange against the stock rail meets the point nowhere in the ${across(last.behindMm)} that were read`,
      ),
    ];
  }
  const met = Array.from(found.draws).filter(Number.isFinite);
  const u = Math.sqrt(met.reduce((sum, place) => sum + (place - nominal.behindMm) ** 2, 0) / met.length);
  return [
    measured(
      at.heading(TOUCH, pointFitMethod, [
        `The flange slopes at ${degreesText(nominal.slopeRad)} where it touches, ${across(nominal.depthMm)} below the top of the stock rail.`,
        nominal.slopeRad >= SHALLOW_RAD
          ? 'A steep flange touching the point where it has become thick is normal running.'
          : 'The flange is shallow there: it is lifted rather than pushed aside.',
        found.outOfRange > 0
          ? `In ${percent(found.outOfRange)} of the draws it touches nowhere as far back as was read.`
          : '',
      ]),
      'crossLength',
      { ...found.taken, value: nominal.behindMm, u },
    ),
  ];
}

const fitRemark = ({ reachMm, least }: PointFit): string =>
  least === null
    ? `The flange passes over it by ${across(-reachMm)}.`
    : `The flange reaches ${across(reachMm)} below it; smallest ${across(least.depthMm)} below the top of the stock rail, where the flange slopes at ${degreesText(least.slopeRad)}.`;
