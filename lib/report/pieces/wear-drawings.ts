import { wearChart } from '../../figures/wear-chart';
import { wornFeatures } from '../../findings/wheels/wear';
import type { Report } from '../report';
import { faint } from '../type/inline';
import { localTime } from '../words';
import type { Writer } from '../writer';

const WIDTH = 600;

/** Wear of each traced wheel of the first derailed wheelset over the distance it had run. */
export function wearDrawings({ context, system }: Report, writer: Writer): void {
  const wheelset = context.first.wheelset?.entity;
  const worn = wheelset === undefined ? [] : wornFeatures(context, wheelset);
  if (worn.length === 0) {
    writer.text([
      faint(
        'A history of wear was not recorded: it takes two undisturbed traces or readings or more of one wheel, each with the distance it had run.',
      ),
    ]);
    return;
  }
  for (const { feature, side, history, limit, from } of worn) {
    const dates = from.map(({ day }) => (day === null ? 'no date' : localTime(day)));
    writer.figure(
      wearChart(
        { system, feature: feature.name, name: `${side} wheel`, history, limit, dates },
        { width: WIDTH },
      ),
      `${feature.name} of the ${side} wheel over the distance run since new or since turned.`,
    );
  }
}
