import { standing } from '../case/current';
import type { CaseRecord, EntityKind, SubjectRef } from '../case/record';
import { GROUPS } from '../readings/quantities';
import type { QuantityGroup, ScreenId } from '../readings/quantity';
import { keepInMemory } from './long-sum';
import { indexReadings, type ReadingIndex } from './reading-index';
import { indexTraces } from './traced/trace-index';
import { withTraces } from './traced/with-traces';
import { FINDING_SEED } from './context';

/** Something not recorded yet: the screen to enter it on, what it is, and where there is one, on which record. */
export type Missing = {
  readonly screen: ScreenId | 'photos';
  readonly text: string;
  readonly subject: SubjectRef | null;
};

type KindLine = {
  readonly kind: EntityKind;
  readonly screen: Missing['screen'];
  readonly text: string;
};

const KINDS_WANTED: readonly KindLine[] = [
  { kind: 'person', screen: 'scene', text: 'No person is entered: nobody can be named with a reading.' },
  {
    kind: 'instrument',
    screen: 'scene',
    text: 'No instrument is entered: uncertainties rest on ordinary instruments.',
  },
  { kind: 'statement', screen: 'scene', text: 'No statement is entered.' },
  { kind: 'vehicle', screen: 'train', text: 'The consist is not entered.' },
  { kind: 'mark', screen: 'marks', text: 'No mark is entered.' },
  { kind: 'station', screen: 'track', text: 'No track station is entered.' },
  { kind: 'wheelset', screen: 'wheels', text: 'No wheelset is entered.' },
  { kind: 'truck', screen: 'wheels', text: 'No truck is entered.' },
  { kind: 'rail', screen: 'rails', text: 'No rail is entered.' },
  {
    kind: 'turnout',
    screen: 'turnout',
    text: 'No turnout is entered. Nothing is missing if none lay within a few hundred feet of the POD.',
  },
];

const FIELDS_WANTED: readonly { readonly field: string; readonly text: string }[] = [
  { field: 'occurredAt', text: 'When it happened is not entered.' },
  { field: 'timeZone', text: 'The time zone of the site is not entered.' },
  { field: 'milepost', text: 'The milepost is not entered.' },
  { field: 'direction', text: 'The direction of travel is not entered: left and right hang on it.' },
  {
    field: 'alignment',
    text: 'Not entered whether the POD lies on tangent or curve, and which rail is high.',
  },
  { field: 'trackClass', text: 'The class of track is not entered: readings are held against no limits.' },
  { field: 'weather', text: 'The weather is not entered.' },
];

/**
 * What a case does not hold yet, screen by screen, drawn from every quantity of the catalogue and
 * so from every explanation, not the likeliest one. Groups of kinds with no record are not
 * repeated under the kind itself.
 */
export function missing(record: CaseRecord): readonly Missing[] {
  const read = withTraces(indexReadings(record), indexTraces(record, FINDING_SEED, keepInMemory));
  return [
    ...FIELDS_WANTED.filter(({ field }) => isEmpty(record.fields[field])).map(({ text }) =>
      at('scene', text),
    ),
    ...KINDS_WANTED.filter(({ kind }) => standing(record, kind).length === 0).map(({ screen, text }) =>
      at(screen, text),
    ),
    ...trainLines(record, read),
    ...markLines(record),
    ...stateLines(record),
    ...GROUPS.flatMap((group) => groupLine(record, read, group)),
    ...photoLines(record),
  ];
}

const at = (screen: Missing['screen'], text: string, subject: SubjectRef | null = null): Missing => ({
  screen,
  text,
  subject,
});

const isEmpty = (field: string | number | boolean | null | undefined): boolean =>
  field === undefined || field === null || field === '';

function trainLines(record: CaseRecord, read: ReadingIndex): readonly Missing[] {
  const vehicles = standing(record, 'vehicle');
  if (vehicles.length === 0) return [];
  const unweighed = vehicles.filter(({ id }) => read.take('vehicle', id, 'grossWeight') === null).length;
  const first = vehicles.find(({ fields }) => fields.firstDerailed === true);
  const wheelsets = standing(record, 'wheelset');
  return [
    ...(first === undefined ? [at('train', 'No vehicle is marked as the first to derail.')] : []),
    ...(unweighed > 0 && unweighed < vehicles.length
      ? [at('train', `Gross weight of ${unweighed} of ${vehicles.length} vehicles is not entered.`)]
      : []),
    ...(record.recorderRuns.every(({ removed }) => removed !== null)
      ? [at('train', 'No event-recorder file is imported.')]
      : []),
    ...(wheelsets.length > 0 && wheelsets.every(({ fields }) => fields.firstDerailed !== true)
      ? [at('wheels', 'No wheelset is marked as the first to derail.')]
      : []),
    ...(first !== undefined &&
    wheelsets.length > 0 &&
    wheelsets.every(({ fields }) => fields.vehicle !== first.id)
      ? [
          at('wheels', 'No wheelset of the first derailed vehicle is entered.', {
            kind: 'vehicle',
            id: first.id,
          }),
        ]
      : []),
  ];
}

function markLines(record: CaseRecord): readonly Missing[] {
  const marks = standing(record, 'mark');
  if (marks.length === 0) return [];
  const pod = marks.find(({ fields }) => fields.isPod === true);
  if (pod === undefined) return [at('marks', 'No mark is set as the first one: the POD is not fixed.')];
  return isEmpty(pod.fields.walkedBackFt)
    ? [
        at('marks', 'Not entered how far back of the first mark both rails were searched.', {
          kind: 'mark',
          id: pod.id,
        }),
      ]
    : [];
}

const WITH_STATE = [
  { kind: 'station', screen: 'track', one: 'station', many: 'stations' },
  { kind: 'wheelset', screen: 'wheels', one: 'wheelset', many: 'wheelsets' },
  { kind: 'truck', screen: 'wheels', one: 'truck', many: 'trucks' },
  { kind: 'rail', screen: 'rails', one: 'rail', many: 'rails' },
  { kind: 'turnout', screen: 'turnout', one: 'turnout', many: 'turnouts' },
] as const;

function stateLines(record: CaseRecord): readonly Missing[] {
  return WITH_STATE.flatMap(({ kind, screen, one, many }) => {
    const all = standing(record, kind);
    const unsaid = all.filter(
      ({ fields }) => isEmpty(fields.disturbance) || fields.disturbance === 'notSaid',
    );
    const [only] = unsaid;
    if (only === undefined) return [];
    return [
      at(
        screen,
        `Not said of ${unsaid.length} of ${all.length} ${all.length === 1 ? one : many} whether the derailment had disturbed ${unsaid.length === 1 ? 'it' : 'them'}: such readings feed no finding.`,
        unsaid.length === 1 ? { kind, id: only.id } : null,
      ),
    ];
  });
}

function groupLine(record: CaseRecord, read: ReadingIndex, group: QuantityGroup): readonly Missing[] {
  if (group.subject !== 'case' && standing(record, group.subject).length === 0) return [];
  if (group.onlyWhere !== undefined && record.fields[group.onlyWhere.field] !== group.onlyWhere.is) return [];
  const unread = group.quantities.filter(({ id }) => !read.anyRead(id));
  if (unread.length === 0) return [];
  const observations = group.quantities.filter(({ kind }) => kind === 'observation').length;
  if (observations === group.quantities.length) {
    return [at(group.screen, `${group.name}: ${unread.length} of ${observations} not looked for.`)];
  }
  if (unread.length === group.quantities.length)
    return [at(group.screen, `${group.name}: nothing is entered.`)];
  const names = unread.map(({ short }) => short.toLowerCase()).join(', ');
  return [at(group.screen, `${group.name}: not entered: ${names}.`)];
}

function photoLines(record: CaseRecord): readonly Missing[] {
  const photos = record.photos.filter(({ removed }) => removed === null);
  if (photos.length === 0) return [at('photos', 'No photo is uploaded.')];
  const bare = photos.filter(({ caption }) => caption.trim() === '').length;
  return bare > 0 ? [at('photos', `${bare} of ${photos.length} photos have no caption.`)] : [];
}
