import type { LoadedCase } from '~/app/case.server';
import { fieldText } from '~/app/entities/table-rows';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingValue, findingView, type FindingView } from '~/app/findings/view.server';
import { subjectKey } from '~/app/photos/subject';
import { photosOf, photoView } from '~/app/photos/view.server';
import { readingsOf } from '~/app/readings/index.server';
import { systemOf } from '~/app/readings/take.server';
import { readingsView, type ReadingsView } from '~/app/readings/view.server';
import type { Actor } from '~/db/actor';
import { KINDS } from '~/lib/case/kinds';
import { nameOfEntity } from '~/lib/case/name-of';
import type { Entity, SubjectRef } from '~/lib/case/record';
import type { Finding } from '~/lib/findings/finding';
import { GROUPS } from '~/lib/readings/quantities';
import type { SubjectKind } from '~/lib/readings/quantity';
import type { PartForm, PartForms } from './forms';
import { glance, type GlanceRow } from './glance';
import { placeOf } from './place';
import { shortTitle } from './short-title';
import { stateNote } from './state-note';

export type PartTab = {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  readonly href: string;
};

export type SubjectPart = {
  readonly kind: SubjectKind;
  readonly id: string;
  readonly name: string;
  readonly edit: string;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  readonly state: string | null;
  readonly removed: string | null;
  readonly glance: readonly GlanceRow[];
  /** The groups of readings there are; one of them is open. */
  readonly tabs: readonly PartTab[];
  readonly open: { readonly readings: ReadingsView; readonly findings: readonly FindingView[] };
  /** Findings of it that belong to none of the groups. */
  readonly others: readonly FindingView[];
  readonly photos: readonly { readonly href: string; readonly thumb: string; readonly alt: string }[];
  readonly addPhotos: string;
};

type Kind = Exclude<SubjectKind, 'case'>;

type Wanted = {
  readonly forms: PartForms;
  /** The group to open; the first when there is no such group. */
  readonly group?: string | null;
  /** Fields that the name says already. */
  readonly named: readonly string[];
};

const MOST_PHOTOS = 12;

function factsOf({ record }: LoadedCase, kind: Kind, entity: Entity, named: readonly string[]) {
  return KINDS[kind].fields
    .filter(({ id }) => !named.includes(id) && id !== 'disturbance')
    .flatMap((field) => {
      const text = fieldText(record, field, entity.fields[field.id]);
      if (text === '' && field.type === 'flag') return [];
      return [{ label: field.label, text: text || 'not said' }];
    });
}

function tabsOf(
  loaded: LoadedCase,
  kind: Kind,
  entity: Entity,
  forms: readonly PartForm[],
): readonly PartTab[] {
  const subject = { kind, id: entity.id };
  const read = readingsOf(loaded, subject);
  const here = placeOf(loaded.caseId, subject);
  return forms.map(({ group }) => {
    const found = GROUPS.find(({ id }) => id === group);
    const ids = new Set(found?.quantities.map(({ id }) => id));
    return {
      id: group,
      name: found?.name ?? group,
      count: read.filter(({ quantity }) => ids.has(quantity)).length,
      href: `${here}&group=${group}#readings`,
    };
  });
}

/** The photos that show a thing, and where more of it are added. */
export function photoStrip(
  loaded: LoadedCase,
  subject: SubjectRef,
): Pick<SubjectPart, 'photos' | 'addPhotos'> {
  const { caseId } = loaded;
  return {
    photos: photosOf(loaded, subject)
      .slice(0, MOST_PHOTOS)
      .map((photo) => {
        const { thumb, alt } = photoView(loaded, photo);
        return { href: `/cases/${caseId}/photos?photo=${photo.id}`, thumb, alt };
      }),
    addPhotos: `/cases/${caseId}/photos?about=${encodeURIComponent(subjectKey(subject))}`,
  };
}

/** Everything a screen shows of one thing: what is said of it, its readings, findings and photos. */
export function subjectPart(
  loaded: LoadedCase,
  kind: Kind,
  entity: Entity,
  { forms, group, named }: Wanted,
  actor: Actor,
): SubjectPart {
  const { record, caseId } = loaded;
  const subject = { kind, id: entity.id };
  const name = nameOfEntity(record, kind, entity);
  const system = systemOf(record.fields);
  // What mechanics makes of several things together is shown once, and not under one of them.
  const findings = caseFindings(loaded).filter(
    (finding) => finding.subject?.id === entity.id && finding.part !== 'mechanics',
  );
  const titled = ({ title }: Finding) => shortTitle(title, name);
  const show = (finding: Finding) => ({ ...findingView(loaded, finding), title: titled(finding) });
  const open = forms.find((form) => form.group === group) ?? forms[0];
  const placed = new Set(forms.flatMap((form) => form.findings));
  return {
    kind,
    id: entity.id,
    name,
    edit: `/cases/${caseId}/records/${kind}/${entity.id}?back=${encodeURIComponent(placeOf(caseId, subject))}`,
    facts: factsOf(loaded, kind, entity, named),
    state: stateNote(kind, entity),
    removed: entity.removed && entity.removed.reason,
    glance: glance(findings, (finding) => findingValue(finding, system), titled),
    tabs: tabsOf(loaded, kind, entity, forms),
    open: {
      readings: readingsView(loaded, subject, [open.group], actor),
      findings: findings.filter(({ what }) => open.findings.includes(what)).map(show),
    },
    others: findings.filter(({ what }) => !placed.has(what)).map(show),
    ...photoStrip(loaded, subject),
  };
}
