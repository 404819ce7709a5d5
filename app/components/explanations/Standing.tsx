const STATE = {
  excluded: { label: 'Excluded', chip: 'chip chip--good' },
  stands: { label: 'Stands', chip: 'chip' },
  notConsidered: { label: 'Not yet considered', chip: 'chip chip--care' },
  notSaid: { label: 'Not said', chip: 'chip' },
} as const;

type Props = { readonly state: keyof typeof STATE; readonly reason: string };

/** What the investigator said of an explanation, with the reason. */
export function Standing({ state, reason }: Props) {
  return (
    <span className="weighing__said">
      <span className={STATE[state].chip}>{STATE[state].label}</span>
      {reason && <span className="small soft">{reason}</span>}
    </span>
  );
}
