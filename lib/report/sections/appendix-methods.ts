import { conditionWhat } from '../../findings/rules/conditions';
import type { Source } from '../../findings/finding';
import { ruleSetById } from '../../rules';
import { besideRows, type Standing } from '../../rules/fill-from-base';
import { RULE_QUANTITIES } from '../../rules/rule-quantity';
import type { RuleSet } from '../../rules/rule-set';
import type { Report, Section } from '../report';
import type { Row, Table } from '../table/table';
import { bold, faint, type Run } from '../type/inline';

const sourceRuns = (sources: readonly Source[]): readonly Run[] =>
  sources.flatMap(({ text, status }, i): Run[] => [
    { text: `${i === 0 ? '' : '\n'}${text}` },
    faint(` (${status})`),
  ]);

const methods = ({ refs }: Report): Table => ({
  columns: [
    { head: 'No.', width: 30 },
    { head: 'Method and formula' },
    { head: 'Where it holds', share: 0.23 },
    { head: 'Sources, and their standing', share: 0.3 },
  ],
  rows: refs.methods.map((method): Row => {
    const number = refs.ofMethod(method.id) ?? '';
    return {
      anchor: number,
      cells: [
        number,
        [bold(method.name), { text: `\n${method.formula}` }],
        method.validRange,
        sourceRuns(method.sources),
      ],
    };
  }),
});

/** Every limit a printed finding was held against, once. */
function limits({ findings }: Report): Table {
  const seen = new Map<string, Row>();
  for (const finding of findings) {
    if (finding.kind !== 'measured') continue;
    for (const check of finding.limits) {
      const key = `${check.citation}|${check.name}`;
      if (!seen.has(key)) seen.set(key, { cells: [check.citation, check.name, sourceRuns([check.source])] });
    }
  }
  return {
    columns: [{ head: 'Citation' }, { head: 'Limit on' }, { head: 'Source, and its standing' }],
    rows: [...seen.values()].sort((a, b) => String(a.cells[0]).localeCompare(String(b.cells[0]), 'en')),
  };
}

const STANDING: Readonly<Record<Standing, string>> = {
  stricter: 'stricter',
  looser: 'looser',
  same: 'the same',
  dropped: 'none of its own',
  alone: 'no such limit in the base',
};

/** The railroad's own limits beside those of the set they are based on. */
function besideBase(set: RuleSet): Table | null {
  const base = ruleSetById(set.basedOn?.id ?? '');
  const rows = base === undefined ? [] : besideRows(set, base);
  if (base === undefined || rows.length === 0) return null;
  const label = (id: string): string => base.classes.find((each) => each.id === id)?.label ?? id;
  return {
    columns: [{ head: 'Limit' }, { head: 'Classes' }, { head: 'Own' }, { head: 'Base' }, { head: 'Own is' }],
    notes: ['Which of the two counts is not decided here; a law that allows less stays in force.'],
    rows: rows.map(({ own, base: limit, classIds, ownPrinted, basePrinted, standing }) => ({
      cells: [
        [
          { text: RULE_QUANTITIES[own.quantity].name },
          faint(`\n${own.sense === 'max' ? 'at most' : 'at least'}; base: ${limit.citation}`),
        ],
        classIds.map(label).join(', '),
        ownPrinted,
        basePrinted,
        STANDING[standing],
      ],
    })),
  };
}

/** What the rules want without a figure, as far as a finding answers it. */
function conditions({ findings, context }: Report): readonly Row[] {
  return (context.rules.track?.conditions ?? []).flatMap((condition): readonly Row[] =>
    findings.some(({ what }) => what === conditionWhat(condition.id))
      ? [{ cells: [condition.citation, condition.wants, sourceRuns([condition.source])] }]
      : [],
  );
}

export const appendixMethods: Section = {
  id: 'methods',
  title: 'Methods and limits',
  kind: 'appendix',
  startsPage: true,
  build(report, writer) {
    writer.heading('Methods');
    writer.text(
      'Only methods used in this report. A source is published, common practice without a source, from memory and still to be looked up, or engineering judgement; each is named as what it is.',
    );
    writer.table('Methods', methods(report));
    writer.heading('Limits');
    const { rules } = report.context;
    if (rules.track !== undefined) {
      writer.text(
        `Track: ${rules.track.name}, ${rules.track.edition}${rules.trackClass === undefined ? '' : `; ${rules.trackClass.label}`}.${
          rules.equipment === undefined
            ? ''
            : ` Equipment: ${rules.equipment.name}, ${rules.equipment.edition}.`
        }`,
      );
    }
    for (const remark of rules.remarks) writer.text(remark);
    if (rules.track?.basedOn !== undefined) {
      for (const note of rules.track.notes) writer.text(note);
      const beside = besideBase(rules.track);
      if (beside !== null) writer.table('The railroad’s own limits beside the base set', beside);
    }
    const table = limits(report);
    if (table.rows.length === 0) writer.text('No finding was held against a limit.');
    else writer.table('Limits the findings were held against', table);
    const wanted = conditions(report);
    if (wanted.length > 0)
      writer.table('Wanted without a figure', {
        columns: [{ head: 'Citation' }, { head: 'What is wanted' }, { head: 'Source, and its standing' }],
        rows: wanted,
      });
    const conventions = [...(rules.track?.conventions ?? []), ...(rules.equipment?.conventions ?? [])];
    if (conventions.length > 0) {
      writer.heading('How the rules were applied');
      writer.list(
        conventions.map(({ text, source }) => [{ text }, faint(` ${source.text} (${source.status}).`)]),
      );
    }
  },
};
