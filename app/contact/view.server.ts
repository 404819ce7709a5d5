import type { LoadedCase } from '~/app/case.server';
import { caseContext, caseFindings } from '~/app/findings/case-findings.server';
import { systemOf } from '~/app/readings/take.server';
import type { ContactInput } from '~/lib/contact/setup';
import { gaugeBelowTopMm, usual, USUAL_RADIUS_MM } from '~/lib/findings/contact/usual';
import type { Context } from '~/lib/findings/context';
import { keyInputsOf } from '~/lib/findings/key-inputs';
import { railReading } from '~/lib/findings/rail-place';
import type { Outline } from '~/lib/outline/outline';
import { formatMeasure } from '~/lib/readings/format';
import { parseMeasure } from '~/lib/readings/parse';
import type { Measure } from '~/lib/readings/quantity';
import { quantityOf } from '~/lib/readings/quantities';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import { chosenOutline, outlineChoices, usualChoice, type OutlineChoice } from './outlines.server';
import { MEASURES, PLACES, type MeasureId, type PlaceId } from './places';

/** An outline as it travels to the page. */
export type SentOutline = { readonly xMm: readonly number[]; readonly yMm: readonly number[] };

export type SentContact = Omit<ContactInput, 'left' | 'right'> & {
  readonly left: { readonly wheel: SentOutline; readonly rail: SentOutline };
  readonly right: { readonly wheel: SentOutline; readonly rail: SentOutline };
};

export type ContactView = {
  readonly system: UnitSystem;
  readonly places: readonly {
    readonly id: PlaceId;
    readonly label: string;
    readonly chosen: string;
    readonly options: readonly OutlineChoice[];
  }[];
  readonly measures: readonly {
    readonly id: MeasureId;
    readonly label: string;
    readonly text: string;
    readonly error: string | null;
    /** Where the number came from when nobody typed one. */
    readonly from: string;
  }[];
  readonly stands: Result<SentContact>;
};

function measureOf(id: string): Measure {
  const quantity = quantityOf(id);
  if (quantity.kind !== 'measure') throw new Error(`${id} is not measured`);
  return quantity;
}

/** Wheels of 28 to 50 in cover light freight cars to steam drivers' trailing wheels; common practice, no source. */
const DIAMETER: Measure = {
  ...measureOf('chordLength'),
  id: 'diameter',
  name: 'Wheel diameter',
  possible: [500, 1500],
  usual: [700, 1300],
};

const QUANTITIES: Readonly<Record<MeasureId, Measure>> = {
  backToBack: measureOf('backToBack'),
  gauge: measureOf('gauge'),
  diameter: DIAMETER,
  cantLeft: measureOf('railCant'),
  cantRight: measureOf('railCant'),
};

type Known = { readonly value: number; readonly from: string };

const READ = 'from the readings';
const INCH = 25.4;

/** Where nothing was read: standard gauge, a new freight wheelset, rails as they usually lean. */
const TAKEN: Readonly<Record<MeasureId, Known>> = {
  backToBack: {
    value: 53.125 * INCH,
    from: 'not read: 53 1/8 in, a new narrow-flange wheelset (from memory)',
  },
  gauge: { value: 56.5 * INCH, from: 'not read: standard gauge' },
  diameter: { value: 2 * USUAL_RADIUS_MM, from: 'not read: 36 in' },
  cantLeft: { value: usual('railCant').value, from: 'not read: the middle of the usual range' },
  cantRight: { value: usual('railCant').value, from: 'not read: the middle of the usual range' },
};

function knownOf(loaded: LoadedCase, context: Context, id: MeasureId): Known {
  const inputs = keyInputsOf(context);
  const diameters = caseFindings(loaded).flatMap((finding) =>
    finding.what === 'wheelDiameter' &&
    finding.kind === 'measured' &&
    finding.subject?.id === context.first.wheelset?.entity.id
      ? [finding.value]
      : [],
  );
  const values: Readonly<Record<MeasureId, number | undefined>> = {
    backToBack: inputs.backToBackMin.measured?.value,
    gauge: inputs.gaugeStanding.measured?.value,
    diameter:
      diameters.length === 0 ? undefined : diameters.reduce((sum, each) => sum + each, 0) / diameters.length,
    cantLeft: railReading(context, 'left', 'railCant')?.taken.value,
    cantRight: railReading(context, 'right', 'railCant')?.taken.value,
  };
  const value = values[id];
  return value === undefined ? TAKEN[id] : { value, from: READ };
}

const textOf = (value: number, quantity: Measure, system: UnitSystem): string =>
  formatMeasure(value, {
    dimension: quantity.dimension,
    system,
    bareUnit: quantity.bareUnit,
    form: 'decimal',
    halfWidth: quantity.dimension === 'angle' ? 0.001 : 0.02,
  });

const sent = ({ xMm, yMm }: Outline): SentOutline => {
  const short = (values: Float64Array): number[] => Array.from(values, (v) => Math.round(v * 1e4) / 1e4);
  return { xMm: short(xMm), yMm: short(yMm) };
};

/** Which wheels stand on which rails, at what distances: as the address says, else as the case was read. */
export function contactView(loaded: LoadedCase, asked: URLSearchParams): ContactView {
  const { record } = loaded;
  const system = systemOf(record.fields);
  const context = caseContext(loaded);
  const places = PLACES.map((place) => {
    const options = outlineChoices(record, place);
    const named = asked.get(place.id);
    const chosen = options.some(({ id }) => id === named) ? (named ?? '') : usualChoice(context, place);
    return {
      id: place.id,
      label: place.label,
      chosen,
      options,
      outline: chosenOutline(record, place, chosen),
    };
  });
  const measures = MEASURES.map(({ id, label }) => {
    const quantity = QUANTITIES[id];
    const typed = asked.get(id)?.trim() ?? '';
    const known = knownOf(loaded, context, id);
    const text = typed === '' ? textOf(known.value, quantity, system) : typed;
    const parsed = typed === '' ? null : parseMeasure(typed, quantity, system);
    const same = typed === textOf(known.value, quantity, system);
    return {
      id,
      label,
      text,
      error: parsed?.ok === false ? parsed.message : null,
      from: typed === '' || same ? known.from : 'as entered here',
      value: parsed?.ok ? parsed.value.value : known.value,
    };
  });
  const value = (id: MeasureId): number => measures.find((each) => each.id === id)?.value ?? NaN;
  const outline = (id: PlaceId): Result<Outline> =>
    places.find((each) => each.id === id)?.outline ?? refuse('Choose an outline.');
  return {
    system,
    places: places.map(({ outline: _, ...place }) => place),
    measures: measures.map(({ value: _, ...measure }) => measure),
    stands: standing(
      outline,
      value,
      gaugeBelowTopMm(context),
      measures.some(({ error }) => error !== null),
    ),
  };
}

function standing(
  outline: (id: PlaceId) => Result<Outline>,
  value: (id: MeasureId) => number,
  belowTopMm: number,
  unread: boolean,
): Result<SentContact> {
  const [leftWheel, rightWheel, leftRail, rightRail] = [
    outline('leftWheel'),
    outline('rightWheel'),
    outline('leftRail'),
    outline('rightRail'),
  ];
  if (!leftWheel.ok) return leftWheel;
  if (!rightWheel.ok) return rightWheel;
  if (!leftRail.ok) return leftRail;
  if (!rightRail.ok) return rightRail;
  if (unread) return refuse('Put right what is marked above; then the wheelset is stood on its rails.');
  return ok({
    left: { wheel: sent(leftWheel.value), rail: sent(leftRail.value) },
    right: { wheel: sent(rightWheel.value), rail: sent(rightRail.value) },
    backToBackMm: value('backToBack'),
    gaugeMm: value('gauge'),
    gaugeBelowTopMm: belowTopMm,
    cantLeftRad: value('cantLeft'),
    cantRightRad: value('cantRight'),
    rollingRadiusMm: value('diameter') / 2,
  });
}
