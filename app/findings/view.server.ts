import type { LoadedCase } from '~/app/case.server';
import { systemOf } from '~/app/readings/take.server';
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
  /** Where its method and its readings are shown. */
  readonly href: string;
};

const formOf = (dimension: Dimension): 'fraction' | 'decimal' =>
  dimension === 'crossLength' ? 'fraction' : 'decimal';

function chance(probability: number): string {
  if (probability < 0.005) return '';
  if (probability > 0.995) return '';
  return `; chance of being beyond it ${Math.round(probability * 100)} %`;
}

const uncapitalised = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function limitView(check: LimitCheck, dimension: Dimension, system: UnitSystem) {
  const value = formatMeasure(check.limit, { dimension, system, form: formOf(dimension) });
  const outcome = check.exceeded ? 'beyond' : 'within';
  return {
    text:
      `${check.sense === 'max' ? 'At most' : 'At least'} ${value}, ${uncapitalised(check.name)} (${check.citation}): ` +
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

export const findingHref = (caseId: string, id: string): string =>
  `/cases/${caseId}/findings/${encodeURIComponent(id)}`;

/** The finding in words and in the units of the case. */
export const findingView = ({ record, caseId }: LoadedCase, finding: Finding): FindingView => ({
  id: finding.id,
  title: finding.title,
  ...findingValue(finding, systemOf(record.fields)),
  remarks: finding.remarks,
  href: findingHref(caseId, finding.id),
});
