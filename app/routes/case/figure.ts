import type { LoaderFunctionArgs } from '@remix-run/node';
import { z } from 'zod';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { ARGUMENT_FIGURE, argumentFigure } from '~/app/figures/argument.server';
import { dressed } from '~/app/figures/dress.server';
import { caseFigure } from '~/app/figures/case-figures.server';
import { SIMULATION_FIGURE, simulationFigure } from '~/app/figures/simulation.server';
import { FIGURE_WIDTHS, type FigureWidth } from '~/app/figures/widths';
import { readLook } from '~/app/look.server';
import type { Figure } from '~/lib/figures/shapes';
import { toSvg } from '~/lib/figures/svg';

const widthSchema = z.enum(Object.keys(FIGURE_WIDTHS) as [FigureWidth, ...FigureWidth[]]).catch('wide');

/** Drawings that wait for the worker. */
const WAITED: Readonly<Record<string, (loaded: LoadedCase, width: FigureWidth) => Promise<Figure | null>>> = {
  [ARGUMENT_FIGURE]: argumentFigure,
  [SIMULATION_FIGURE]: simulationFigure,
};

/** A drawing of the case as a picture of its own, in the inks of the chosen look. */
export async function loader({ request, params }: LoaderFunctionArgs): Promise<Response> {
  const loaded = loadCase(params);
  const asked = new URL(request.url).searchParams;
  const name = params.figure ?? '';
  const width = widthSchema.parse(asked.get('width'));
  const look = await readLook(request);
  const waited = WAITED[name];
  const figure = waited ? await waited(loaded, width) : caseFigure(loaded, name, width);
  const svg = derived(loaded, `svg ${name} ${width}`, () => figure && toSvg(figure));
  if (svg === null) throw notFound('There is nothing to draw yet.');
  const current = asked.get('case') === loaded.head.slice(0, 16) && asked.get('look') === look;
  return new Response(dressed(svg, look), {
    headers: {
      'Content-Type': 'image/svg+xml; charset=utf-8',
      // The address names the state of the case and the look, so the picture behind it stays.
      'Cache-Control': current ? 'private, max-age=3600' : 'no-store',
    },
  });
}
