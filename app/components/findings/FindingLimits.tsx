import type { FindingTone, FindingView } from '~/app/findings/view.server';

const CHIP: Readonly<Record<FindingTone, string>> = {
  good: 'chip chip--good',
  bad: 'chip chip--bad',
  care: 'chip chip--care',
  plain: 'chip',
};

/** The limits a finding is held against, each saying in words whether it is exceeded. */
export function FindingLimits({ limits }: Pick<FindingView, 'limits'>) {
  if (limits.length === 0) return null;
  return (
    <ul className="plain-list">
      {limits.map(({ text, tone }) => (
        <li key={text}>
          <span className={CHIP[tone]}>{text}</span>
        </li>
      ))}
    </ul>
  );
}
