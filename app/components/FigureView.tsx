import { useMemo } from 'react';
import type { Figure } from '~/lib/figures/shapes';
import { toSvg } from '~/lib/figures/svg';

type Props = {
  readonly figure: Figure;
  readonly caption?: string;
  /** A chart that should scroll on a phone rather than shrink below reading size. */
  readonly wide?: boolean;
};

/** A drawing, in the inks of the page. */
export function FigureView({ figure, caption, wide = false }: Props) {
  const html = useMemo(() => ({ __html: toSvg(figure) }), [figure]);
  return <SvgView html={html} caption={caption} wide={wide} />;
}

/** As FigureView, for an SVG made (and kept) by the server; saves sending the shapes as well. */
export function SvgView({
  html,
  caption,
  wide = false,
}: Omit<Props, 'figure'> & { readonly html: { readonly __html: string } }) {
  return (
    <figure className={wide ? 'figure figure--wide' : 'figure'}>
      {/* A box that scrolls must be reachable with the keyboard. */}
      <div dangerouslySetInnerHTML={html} tabIndex={wide ? 0 : undefined} />
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  );
}
