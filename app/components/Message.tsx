import type { ReactNode } from 'react';

type Props = {
  readonly tone: 'good' | 'bad' | 'care';
  readonly children: ReactNode;
};

const WORDS = { good: 'Saved.', bad: 'Not saved.', care: 'Please check.' } as const;

/** What became of what was just sent. Its first word says it without the colour. */
export function Message({ tone, children }: Props) {
  return (
    <div className={`note note--${tone}`} role={tone === 'bad' ? 'alert' : 'status'}>
      <strong>{WORDS[tone]}</strong> {children}
    </div>
  );
}
