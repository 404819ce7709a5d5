import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { systemOf } from '~/app/readings/take.server';
import { quantityText, readingText } from '~/app/readings/wording';
import { nameOf } from '~/lib/case/name-of';
import type { Reading } from '~/lib/case/record';
import type { Finding, LimitCheck } from '~/lib/findings/finding';
import { formatMeasure, formatWithUncertainty } from '~/lib/readings/format';
import type { Dimension, UnitSystem } from '~/lib/readings/unit';

export type FindingTone = 'good' | 'bad' | 'care' | 'plain';

/** A finding in words, ready to be shown. */
export type FindingView = {
  readonly id: string;
  readonly title: string;
  readonly value: string;
  /** How the value is to be taken; a limit that is exceeded is 'bad'. */
  readonly tone: FindingTone;
  readonly limits: readonly { readonly text: string; readonly tone: FindingTone }[];
  readonly remarks: readonly string[];
  readonly method: {
    readonly id: string;
    readonly name: string;
    readonly formula: string;
    readonly validRange: string;
    readonly sources: readonly string[];
  };
  /** Readings it came from; the recorder run has no reading of its own and leads to Train. */
  readonly from: readonly { readonly href: string; readonly text: string }[];
  /** How many further readings are not listed. */
  readonly more: number;
};

const MOST_READINGS = 24;

const formOf = (dimension: Dimension): 'fraction' | 'decimal' =>
  dimension === 'crossLength' ? 'fraction' : 'decimal';

function chance(probability: number): string {
  if (probability < 0.005) return '';
  if (probability > 0.995) return '';
  return `; chance of being beyond it ${Math.round(probability * 100)} %`;
}

function limitView(check: LimitCheck, dimension: Dimension, system: UnitSystem) {
  const value = formatMeasure(check.limit, { dimension, system, form: formOf(dimension) });
  const outcome = check.exceeded ? 'beyond' : 'within';
  return {
    text:
      `${check.sense === 'max' ? 'At most' : 'At least'} ${value}, ${check.name} (${check.citation}): ` +
      `${outcome}${chance(check.probabilityExceeds)}`,
    tone: check.exceeded ? ('bad' as const) : ('good' as const),
  };
}

/** Value, tone and limits alone. */
export function findingValue(
  finding: Finding,
  system: UnitSystem,
): Pick<FindingView, 'value' | 'tone' | 'limits'> {
  switch (finding.kind) {
    case 'measured': {
      const { value, u, dimension } = finding;
      const limits = finding.limits.map((check) => limitView(check, dimension, system));
      return {
        value: formatWithUncertainty(value, u, dimension, system, { form: formOf(dimension) }),
        tone: limits.some(({ tone }) => tone === 'bad') ? 'bad' : 'plain',
        limits,
      };
    }
    case 'passFail':
      return {
        value: finding.pass ? `Passes: ${finding.check}` : `Fails: ${finding.check}`,
        tone: finding.pass ? 'good' : 'bad',
        limits: [],
      };
    case 'notMeasured':
      return { value: `Not measured: ${finding.missing.join('; ')}`, tone: 'care', limits: [] };
    case 'outOfRange':
      return { value: `Outside the method’s range: ${finding.why}`, tone: 'care', limits: [] };
  }
}

const readingById = (loaded: LoadedCase): ReadonlyMap<string, Reading> =>
  derived(
    loaded,
    'readings by id',
    () => new Map(loaded.record.readings.map((reading) => [reading.id, reading])),
  );

function fromOf(loaded: LoadedCase, id: string): FindingView['from'][number] {
  const { record, caseId } = loaded;
  const reading = readingById(loaded).get(id);
  if (reading) {
    const about = reading.subject.kind === 'case' ? '' : `${nameOf(record, reading.subject)}: `;
    const what = quantityText(reading.quantity, reading.slot);
    return { href: `/cases/${caseId}/readings/${id}`, text: `${about}${what} ${readingText(reading)}` };
  }
  const run = record.recorderRuns.find((each) => each.id === id);
  return { href: `/cases/${caseId}/train#recorder`, text: `Recorder run “${run?.name ?? id}”` };
}

/** The finding in words and in the units of the case. */
export function findingView(loaded: LoadedCase, finding: Finding): FindingView {
  const { method } = finding;
  const readings = 'readings' in finding ? finding.readings : [];
  return {
    id: finding.id,
    title: finding.title,
    ...findingValue(finding, systemOf(loaded.record.fields)),
    remarks: finding.remarks,
    method: {
      id: method.id,
      name: method.name,
      formula: method.formula,
      validRange: method.validRange,
      sources: method.sources.map(({ text, status }) =>
        status === 'published' ? text : `${text} (${status})`,
      ),
    },
    from: readings.slice(0, MOST_READINGS).map((id) => fromOf(loaded, id)),
    more: Math.max(0, readings.length - MOST_READINGS),
  };
}
