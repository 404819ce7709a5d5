import { wayOf } from '~/app/rails/ways';
import { PART_FORMS, type PartForms } from '~/app/subjects/forms';
import { placeOf } from '~/app/subjects/place';
import type { CaseRecord, SubjectRef } from '~/lib/case/record';
import type { Finding } from '~/lib/findings/finding';

const groupOf = (forms: PartForms, what: string): string =>
  (forms.find(({ findings }) => findings.includes(what)) ?? forms[0]).group;

/** The thing whose screen shows the finding: a defect stands under its wheelset, side bearings under a truck. */
function shownUnder(record: CaseRecord, { kind, id }: SubjectRef): SubjectRef {
  if (kind === 'wheelDefect') {
    const defect = record.entities.wheelDefect.find((each) => each.id === id);
    return { kind: 'wheelset', id: String(defect?.fields.wheelset ?? '') };
  }
  if (kind === 'vehicle') {
    const truck = record.entities.truck.find(({ fields, removed }) => !removed && fields.vehicle === id);
    return truck ? { kind: 'truck', id: truck.id } : { kind, id };
  }
  return { kind, id };
}

function pageOf(
  record: CaseRecord,
  { part, what, subject }: Pick<Finding, 'part' | 'what' | 'subject'>,
): string {
  const base = `/cases/${record.id}`;
  // The rails are where wheel and rail come together.
  if (part === 'mechanics') return `${base}/rails?way=${wayOf(what).id}`;
  if (subject === null || subject.kind === 'case' || part === 'train') return `${base}/${part}`;
  if (part === 'track') {
    const station = record.entities.station.find(({ id }) => id === subject.id);
    return station ? `${base}/track?of=${encodeURIComponent(String(station.fields.name))}` : `${base}/track`;
  }
  const shown = shownUnder(record, subject);
  const place = placeOf(record.id, shown);
  const own = shown.id === subject.id && shown.kind in PART_FORMS;
  if (!own) return place;
  return `${place}&group=${groupOf(PART_FORMS[shown.kind as keyof typeof PART_FORMS], what)}`;
}

/** Where the finding is shown among others, beside the boxes for its readings. */
export const findingPlace = (
  record: CaseRecord,
  finding: Pick<Finding, 'id' | 'part' | 'what' | 'subject'>,
): string => `${pageOf(record, finding)}#${finding.id}`;
