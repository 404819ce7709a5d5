import { SvgView } from '../FigureView';

export type DraftView =
  | { readonly ok: true; readonly svg: string; readonly points: number; readonly size: string }
  | { readonly ok: false; readonly message: string };

/** The line as it would be kept, or what stands in its way. */
export function Draft({ draft }: { readonly draft: DraftView }) {
  return draft.ok ? (
    <SvgView
      html={{ __html: draft.svg }}
      caption={`${draft.points} points, ${draft.size}. It is placed upright once it is kept.`}
    />
  ) : (
    <div className="note note--care" role="status">
      <strong>Not yet a line.</strong> {draft.message}
    </div>
  );
}
