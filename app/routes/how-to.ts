import type { LoaderFunctionArgs } from '@remix-run/node';
import { notFound } from '~/app/case.server';
import { dressed } from '~/app/figures/dress.server';
import { readLook } from '~/app/look.server';
import { howToFigure } from '~/lib/figures/howto';
import { toSvg } from '~/lib/figures/svg';

/** The drawing of how a reading is taken, as a picture of its own. */
export async function loader({ request, params }: LoaderFunctionArgs): Promise<Response> {
  const figure = howToFigure(params.figure ?? '');
  if (!figure) throw notFound('There is no such drawing.');
  const look = await readLook(request);
  const current = new URL(request.url).searchParams.get('look') === look;
  return new Response(dressed(toSvg(figure), look), {
    headers: {
      'Content-Type': 'image/svg+xml; charset=utf-8',
      'Cache-Control': current ? 'private, max-age=3600' : 'no-store',
    },
  });
}
