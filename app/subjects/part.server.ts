import type { LoadedCase } from '~/app/case.server';
import { fieldText } from '~/app/entities/table-rows';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingView, type FindingView } from '~/app/findings/view.server';
import { subjectKey } from '~/app/photos/subject';
import { photosOf, photoView } from '~/app/photos/view.server';
import { readingsView, type ReadingsView } from '~/app/readings/view.server';
import type { Actor } from '~/db/actor';
import { KINDS } from '~/lib/case/kinds';
import { nameOfEntity } from '~/lib/case/name-of';
import type { Entity } from '~/lib/case/record';
import type { Finding } from '~/lib/findings/finding';
import type { SubjectKind } from '~/lib/readings/quantity';
import { placeOf } from './place';
import { stateNote } from './state-note';

/** Readings taken with one instrument, and which findings stand beside them, by the start of their `what`. */
export type PartForm = { readonly groups: readonly string[]; readonly findings: readonly string[] };

export type SubjectPart = {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
  readonly edit: string;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  readonly state: string | null;
  readonly removed: string | null;
  readonly forms: readonly { readonly readings: ReadingsView; readonly findings: readonly FindingView[] }[];
  /** Findings of it that belong to none of the forms. */
  readonly others: readonly FindingView[];
  readonly photos: readonly { readonly href: string; readonly thumb: string; readonly alt: string }[];
  readonly addPhotos: string;
};

type Wanted = {
  readonly forms: readonly PartForm[];
  /** Fields that the name says already. */
  readonly named: readonly string[];
};

const MOST_PHOTOS = 12;

function factsOf(
  { record }: LoadedCase,
  kind: Exclude<SubjectKind, 'case'>,
  entity: Entity,
  named: readonly string[],
) {
  return KINDS[kind].fields
    .filter(({ id }) => !named.includes(id) && id !== 'disturbance')
    .flatMap((field) => {
      const text = fieldText(record, field, entity.fields[field.id]);
      if (text === '' && field.type === 'flag') return [];
      return [{ label: field.label, text: text || 'not said' }];
    });
}

/** Everything a screen shows of one thing: what is said of it, its readings, findings and photos. */
export function subjectPart(
  loaded: LoadedCase,
  kind: Exclude<SubjectKind, 'case'>,
  entity: Entity,
  { forms, named }: Wanted,
  actor: Actor,
): SubjectPart {
  const { record, caseId } = loaded;
  const subject = { kind, id: entity.id };
  const here = placeOf(caseId, subject);
  // What mechanics makes of several things together is shown once, and not under one of them.
  const findings = caseFindings(loaded).filter(
    (finding) => finding.subject?.id === entity.id && finding.part !== 'mechanics',
  );
  const beside = (form: PartForm) => (finding: Finding) =>
    form.findings.some((start) => finding.what.startsWith(start));
  const show = (finding: Finding) => findingView(loaded, finding);
  return {
    kind,
    id: entity.id,
    name: nameOfEntity(record, kind, entity),
    edit: `/cases/${caseId}/records/${kind}/${entity.id}?back=${encodeURIComponent(here)}`,
    facts: factsOf(loaded, kind, entity, named),
    state: stateNote(entity),
    removed: entity.removed && entity.removed.reason,
    forms: forms.map((form) => ({
      readings: readingsView(loaded, subject, form.groups, actor),
      findings: findings.filter(beside(form)).map(show),
    })),
    others: findings.filter((finding) => !forms.some((form) => beside(form)(finding))).map(show),
    photos: photosOf(loaded, subject)
      .slice(0, MOST_PHOTOS)
      .map((photo) => {
        const { thumb, alt } = photoView(loaded, photo);
        return { href: `/cases/${caseId}/photos?photo=${photo.id}`, thumb, alt };
      }),
    addPhotos: `/cases/${caseId}/photos?about=${encodeURIComponent(subjectKey(subject))}`,
  };
}
