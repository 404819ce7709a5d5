import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { fieldText } from '~/app/entities/table-rows';
import { currentReadings, standing } from '~/lib/case/current';
import { caseKind } from '~/lib/case/kinds';
import { nameOfEntity } from '~/lib/case/name-of';
import type { CaseRecord } from '~/lib/case/record';

export type SummaryFact = { readonly label: string; readonly text: string; readonly href?: string };

const SHOWN = [
  'occurredAt',
  'railroad',
  'subdivision',
  'milepost',
  'track',
  'direction',
  'trackClass',
  'alignment',
  'weather',
  'ruleSet',
] as const;

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

function trainFacts(record: CaseRecord, base: string): readonly SummaryFact[] {
  const vehicles = standing(record, 'vehicle');
  const derailed = vehicles.filter(({ fields }) => fields.derailed === true);
  const hazmat = vehicles.filter(({ fields }) => fields.hazmat === true);
  const first = vehicles.find(({ fields }) => fields.firstDerailed === true);
  return [
    {
      label: 'Train',
      text:
        vehicles.length === 0
          ? 'not entered'
          : `${count(vehicles.length, 'vehicle', 'vehicles')}, ${derailed.length} derailed, ${hazmat.length} with hazardous material`,
      href: `${base}/train`,
    },
    {
      label: 'First to derail',
      text: first ? nameOfEntity(record, 'vehicle', first) : 'not said',
      href: `${base}/train`,
    },
  ];
}

/** The case in a dozen facts, each leading to where it is entered. */
export const summaryFacts = (loaded: LoadedCase): readonly SummaryFact[] =>
  derived(loaded, 'summary', () => {
    const { record, caseId } = loaded;
    const base = `/cases/${caseId}`;
    const pod = standing(record, 'mark').find(({ fields }) => fields.isPod === true);
    const photos = record.photos.filter(({ removed }) => removed === null).length;
    return [
      ...caseKind.fields
        .filter(({ id }) => (SHOWN as readonly string[]).includes(id))
        .map((field) => ({
          label: field.label,
          text: fieldText(record, field, record.fields[field.id]) || 'not said',
          href: `${base}/scene`,
        })),
      {
        label: 'Point of derailment (POD)',
        text: pod ? nameOfEntity(record, 'mark', pod) : 'no mark is said to be the first',
        href: `${base}/marks`,
      },
      ...trainFacts(record, base),
      {
        label: 'Track',
        text: count(standing(record, 'station').length, 'station', 'stations'),
        href: `${base}/track`,
      },
      {
        label: 'Readings that stand',
        text: `${currentReadings(record).length} of ${record.readings.length} entered`,
        href: `${base}/log`,
      },
      { label: 'Photos', text: String(photos), href: `${base}/photos` },
    ];
  });
