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
export function FigureView({ figure, caption, wide }: Props) {
  const html = useMemo(() => ({ __html: toSvg(figure) }), [figure]);
  return <SvgView html={html} title={figure.title} caption={caption} wide={wide} />;
}

type SvgProps = Omit<Props, 'figure'> & {
  readonly html: { readonly __html: string };
  /** Needed when `wide`: names the box that scrolls. */
  readonly title?: string;
};

/** As FigureView, for an SVG made (and kept) by the server; saves sending the shapes as well. */
export function SvgView({ html, title, caption, wide = false }: SvgProps) {
  return (
    <figure className={wide ? 'figure figure--wide' : 'figure'}>
      {wide ? (
        // A box that scrolls must be reachable with the keyboard.
        <div
          className="figure__scroll"
          role="region"
          aria-label={title}
          tabIndex={0}
          dangerouslySetInnerHTML={html}
        />
      ) : (
        <div dangerouslySetInnerHTML={html} />
      )}
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  );
}
