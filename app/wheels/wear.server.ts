import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext } from '~/app/findings/case-findings.server';
import { systemOf } from '~/app/readings/take.server';
import { localTime } from '~/app/times';
import type { Entity } from '~/lib/case/record';
import { toSvg } from '~/lib/figures/svg';
import { wearChart } from '~/lib/figures/wear-chart';
import { wornFeatures } from '~/lib/findings/wheels/wear';

const WIDTH = 520;

export type WearPicture = { readonly id: string; readonly svg: string };

/** What wore on the wheels of one wheelset over the distance they had run, as SVG; none without two dated outlines. */
export const wearPictures = (loaded: LoadedCase, wheelset: Entity): readonly WearPicture[] =>
  derived(loaded, `wear of ${wheelset.id}`, () =>
    wornFeatures(caseContext(loaded), wheelset).map(({ feature, side, history, limit, from }) => ({
      id: `${side}-${feature.id}`,
      svg: toSvg(
        wearChart(
          {
            system: systemOf(loaded.record.fields),
            feature: feature.name,
            name: `${side} wheel`,
            history,
            limit,
            dates: from.map(({ day }) => (day === null ? 'no date' : localTime(day))),
          },
          { width: WIDTH },
        ),
      ),
    })),
  );
