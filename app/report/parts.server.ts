import type { LoadedCase } from '~/app/case.server';
import { standing } from '~/lib/case/current';
import type { EntityKind } from '~/lib/case/record';
import { OTHER_EXPLANATION_IDS } from '~/lib/explanations/explanation';

export type ReportPart = {
  readonly name: string;
  /** What it will hold, in words. */
  readonly holds: string;
  /** What a reader will miss; empty when nothing is. */
  readonly gap: string;
  /** Screen on which to fill the gap. */
  readonly screen: string;
};

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** What the report will contain as the case stands, with its gaps named. */
export function reportParts({ record }: LoadedCase): readonly ReportPart[] {
  const how = (kind: EntityKind): number => standing(record, kind).length;
  const part = (
    name: string,
    screen: string,
    kinds: readonly (readonly [EntityKind, string, string])[],
  ): ReportPart => {
    const there = kinds.filter(([kind]) => how(kind) > 0);
    const missing = kinds.filter(([kind]) => how(kind) === 0);
    return {
      name,
      screen,
      holds: there.map(([kind, one, many]) => count(how(kind), one, many)).join(', '),
      gap:
        missing.length === 0
          ? ''
          : `Will say “not recorded”: ${missing.map(([, , many]) => many).join(', ')}.`,
    };
  };
  const photos = record.photos.filter(({ removed }) => removed === null);
  const uncaptioned = photos.filter(({ caption }) => caption.trim() === '').length;
  const runs = record.recorderRuns.filter(({ removed }) => removed === null).length;
  const considered = new Set(record.standings.map(({ explanation }) => explanation));
  const open = OTHER_EXPLANATION_IDS.filter((id) => !considered.has(id)).length;
  const written = (['summary', 'determination', 'signatories'] as const).filter(
    (id) => record.narrative[id].trim() !== '',
  );
  const unwritten = (['summary', 'determination', 'signatories'] as const).filter(
    (id) => !written.includes(id),
  );
  return [
    {
      name: 'Summary, determination, signatures',
      screen: 'report',
      holds: written.join(', '),
      gap: unwritten.length === 0 ? '' : `Not written yet: ${unwritten.join(', ')}.`,
    },
    part('Site and train', 'train', [
      ['vehicle', 'vehicle', 'vehicles'],
      ['person', 'person', 'people'],
      ['instrument', 'instrument', 'instruments'],
    ]),
    part('Point of derailment and marks', 'marks', [['mark', 'mark', 'marks']]),
    part('Track readings', 'track', [['station', 'station', 'stations']]),
    part('Wheels and trucks', 'wheels', [
      ['wheelset', 'wheelset', 'wheelsets'],
      ['truck', 'truck', 'trucks'],
    ]),
    part('Rails', 'rails', [['rail', 'rail', 'rails']]),
    part('Turnout', 'turnout', [['turnout', 'turnout', 'turnouts']]),
    {
      name: 'Train handling',
      screen: 'train',
      holds: runs === 0 ? '' : count(runs, 'recorder file', 'recorder files'),
      gap: runs === 0 ? 'Will say “not recorded”: event recorder.' : '',
    },
    {
      name: 'Explanations considered',
      screen: 'explanations',
      holds: 'four weighed against each other and against “something else”',
      gap:
        open === 0
          ? ''
          : `${count(open, 'other explanation is', 'other explanations are')} neither excluded nor left standing.`,
    },
    part('Statements', 'scene', [['statement', 'statement', 'statements']]),
    {
      name: 'Photos',
      screen: 'photos',
      holds: photos.length === 0 ? '' : count(photos.length, 'photo', 'photos'),
      gap:
        photos.length === 0
          ? 'Will say “not recorded”: photos.'
          : uncaptioned === 0
            ? ''
            : `${count(uncaptioned, 'photo has', 'photos have')} no caption.`,
    },
    {
      name: 'Appendices',
      screen: 'log',
      holds: `${count(record.readings.length, 'reading', 'readings')} with person, time, instrument and uncertainty; methods and limits with sources; judgement tables; change log`,
      gap: '',
    },
  ];
}
