import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { standing } from '~/lib/case/current';
import { consistData, consistFigure } from '~/lib/figures/consist';
import { toSvg } from '~/lib/figures/svg';

const WIDTH = 1120;

/** The train drawn to scale; null while it has no vehicle. */
export const consistSvg = (loaded: LoadedCase): string | null =>
  derived(loaded, 'consist figure', () =>
    standing(loaded.record, 'vehicle').length === 0
      ? null
      : toSvg(consistFigure(consistData(loaded.record), { width: WIDTH })),
  );
