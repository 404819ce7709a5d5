import { standing } from '../../case/current';
import { backToBackMethod } from '../../wheel/back-to-back';
import { formatMeasure } from '../../readings/format';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll, conditionRemarks } from '../rules-in-force';
import { backToBackOf } from './back-to-back-of';
import { axleName, vehicleTypeOf, whereReadRemarks } from './wheel-title';
import { across } from '../words';

/** Mean, smallest and swing of back-to-back for every wheelset measured. */
export const backToBackFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'wheelset').flatMap((wheelset): readonly Finding[] => {
    const name = axleName(context, wheelset);
    const type = vehicleTypeOf(context, wheelset);
    const width = context.rules.equipmentLimits(type, 'backToBack');
    const variation = context.rules.equipmentLimits(type, 'backToBackVariation');
    const heading = (what: string, title: string, remarks: readonly string[]): Heading => ({
      part: 'wheels',
      method: backToBackMethod,
      what,
      title: `${title}, ${name}`,
      subject: { kind: 'wheelset', id: wheelset.id },
      remarks: distinct([...whereReadRemarks(wheelset), ...remarks]),
    });
    const found = backToBackOf(context, wheelset.id);
    if (found === null) {
      const why = anyLeftOut(context, wheelset.id);
      return why === null
        ? []
        : [
            notMeasured(heading('backToBackMean', 'Back-to-back, mean', []), [
              `back-to-back undisturbed; read only ${why}`,
            ]),
          ];
    }
    const { mean, least, swing, fit } = found;
    const swingHeading = heading('backToBackSwing', 'Back-to-back, swing round the wheel', [
      ...conditionRemarks(variation),
      ...(fit === null
        ? []
        : [
            fit.amplitudeMm > 2 * fit.uAmplitudeMm
              ? `Greatest at ${formatMeasure(fit.phaseRad, { dimension: 'angle', unit: '°' })} on the clock.`
              : 'No larger than the readings could give by themselves.',
            ...(fit.residualMm === null
              ? ['Three positions always fit: there is no residual to check them by.']
              : [`The readings scatter by ${across(fit.residualMm)} about the fit.`]),
          ]),
    ]);
    return [
      measured(
        heading('backToBackMean', 'Back-to-back, mean', conditionRemarks(width)),
        'crossLength',
        mean,
        checkAll(width, mean.value, mean.u),
      ),
      measured(heading('backToBackLeast', 'Back-to-back, smallest', []), 'crossLength', least),
      swing === null
        ? notMeasured(swingHeading, ['back-to-back at three or more places spread round the wheel'])
        : measured(swingHeading, 'crossLength', swing, checkAll(variation, swing.value, swing.u)),
    ];
  });

function anyLeftOut(context: Context, wheelsetId: string): string | null {
  const [why] = context.read
    .slots('wheelset', wheelsetId, 'backToBack')
    .flatMap((slot) => context.read.leftOut('wheelset', wheelsetId, 'backToBack', slot) ?? []);
  return why === undefined ? null : LEFT_OUT_WORDS[why];
}
