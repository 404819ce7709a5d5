import type { FigureRef } from '~/app/figures/view.server';
import { useLook } from './look';

type Props = { readonly figure: FigureRef; readonly caption?: string };

/**
 * A large drawing as a picture of its own: the page stays small, and the browser keeps the drawing
 * while the case does not change. On a phone the drawing made for a phone is taken.
 */
export function FigureImage({ figure: { href, title, alt, sizes }, caption }: Props) {
  const look = useLook();
  const src = (width: keyof typeof sizes) => `${href}&look=${look}&width=${width}`;
  return (
    <figure className="figure figure--picture">
      <picture>
        <source media="(max-width: 40rem)" srcSet={src('narrow')} {...sizes.narrow} />
        <img src={src('wide')} alt={`${title}. ${alt}`} {...sizes.wide} decoding="async" />
      </picture>
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  );
}
