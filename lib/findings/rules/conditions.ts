import { standing } from '../../case/current';
import { nameOf } from '../../case/name-of';
import type { SubjectRef } from '../../case/record';
import type { Choice, SubjectKind } from '../../readings/quantity';
import { quantityOf } from '../../readings/quantities';
import { conditionsFor, meets } from '../../rules/apply';
import type { RuleCondition } from '../../rules/rule-set';
import { distinct, notMeasured, passFail, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';

export const ruleConditionMethod: Method = {
  id: 'rule-condition',
  name: 'Requirement without a figure, by what was seen',
  formula:
    'Fails when the answer recorded is one of those the rule set lists as not meeting the requirement, passes with any other; “could not tell” says neither.',
  validRange: 'Answers about things the derailment had not disturbed, for the class of track in force.',
  sources: [
    { text: 'The section named with each requirement', status: 'published' },
    { text: 'Which answers meet it', status: 'engineering judgement' },
  ],
};

const PARTS: Readonly<Partial<Record<SubjectKind, Finding['part']>>> = {
  case: 'track',
  station: 'track',
  turnout: 'turnout',
  rail: 'rails',
};

const choiceOf = (quantity: string): Choice | null => {
  const found = quantityOf(quantity);
  return found.kind === 'choice' ? found : null;
};

/** An answer by its label, as it stands in a sentence. */
export const answerLabel = (quantity: string, answer: string): string =>
  choiceOf(quantity)?.choices.find(({ id }) => id === answer)?.label ?? answer;

function subjectsOf(context: Context, kind: SubjectKind): readonly SubjectRef[] {
  if (kind === 'case') return [{ kind: 'case', id: context.record.id }];
  if (kind === 'station') return context.stations.map(({ id }) => ({ kind, id }));
  return standing(context.record, kind).map(({ id }) => ({ kind, id }));
}

/** The first part of the id of a finding about a condition. */
export const conditionWhat = (id: string): string => `condition-${id}`;

/**
 * Requirements of the rule set that give no figure, for the class in force: pass or fail by the
 * answer recorded, at every place where one was. Nothing answered gives nothing.
 */
export function conditionFindings(context: Context): readonly Finding[] {
  const { track, trackClass } = context.rules;
  if (track === undefined || trackClass === undefined) return [];
  return (track.conditions ?? [])
    .filter(({ quantity, classes }) => classes.includes(trackClass.id) && context.read.anyRead(quantity))
    .flatMap((condition) => {
      const choice = choiceOf(condition.quantity);
      if (choice === null) return [];
      return subjectsOf(context, choice.subject).flatMap((subject) => {
        const answerTo = (quantity: string): string | null =>
          context.read.state(subject.kind, subject.id, quantity)?.state ?? null;
        const holds = conditionsFor(track, trackClass.id, answerTo).includes(condition);
        return holds ? ofSubject(context, condition, choice, subject) : [];
      });
    });
}

function ofSubject(
  context: Context,
  condition: RuleCondition,
  { slots }: Choice,
  subject: SubjectRef,
): readonly Finding[] {
  const places = slots.length === 0 ? [{ id: '', label: '' }] : slots;
  return places.flatMap((slot): readonly Finding[] => {
    const { quantity } = condition;
    const said = context.read.state(subject.kind, subject.id, quantity, slot.id);
    const why = said === null ? context.read.leftOut(subject.kind, subject.id, quantity, slot.id) : null;
    if (said === null && why === null) return [];
    const name = quantityOf(quantity).name;
    const what = slot.label === '' ? name : `${name}, ${slot.label.toLowerCase()}`;
    const heading: Heading = {
      part: PARTS[subject.kind] ?? 'track',
      method: ruleConditionMethod,
      what: conditionWhat(condition.id),
      title: subject.kind === 'case' ? what : `${what}, ${uncapitalised(nameOf(context.record, subject))}`,
      subject: subject.kind === 'case' ? null : subject,
      slot: slot.id,
      remarks: [condition.note ?? '', condition.consequence?.text ?? ''],
    };
    if (said === null)
      return why === null
        ? []
        : [notMeasured(heading, [`${what.toLowerCase()} undisturbed; seen only ${LEFT_OUT_WORDS[why]}`])];
    const met = meets(condition, said.state);
    if (met === null) return [notMeasured(heading, [`${what.toLowerCase()}: it could not be told`])];
    return [
      passFail(
        { ...heading, remarks: distinct([...(heading.remarks ?? []), ...said.remarks]) },
        {
          pass: met,
          check: `${condition.wants} (${condition.citation}); found: ${uncapitalised(answerLabel(quantity, said.state))}`,
          readings: said.readings,
        },
      ),
    ];
  });
}

const uncapitalised = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
