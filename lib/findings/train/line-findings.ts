import { combine } from '../../readings/uncertainty';
import { lineProfileMethod } from '../../train/line-profile';
import { measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import type { Taken } from '../reading-index';
import { curveAtPod } from '../track/curving';
import { lineProfile, takenOnLine } from './line-profile';

/** Both are said to differ when they lie further apart than this many standard uncertainties. */
const CLEARLY = 2;

const differs = (one: Taken, other: Taken, what: string): string =>
  Math.abs(one.value - other.value) > CLEARLY * combine(one.u, other.u)
    ? `${what} differs from it by more than their uncertainty (k = 2): look where the distances of the chart are counted from.`
    : `${what} agrees with it within their uncertainty (k = 2).`;

/** Grade and curvature at the POD by the profile of the line, held against what was read there. */
export function lineFindings(context: Context): readonly Finding[] {
  const profile = lineProfile(context);
  const heading = (what: string, title: string, remarks: readonly string[]): Heading => ({
    part: 'train',
    what,
    title,
    method: lineProfileMethod,
    subject: null,
    remarks,
  });
  const grade = takenOnLine(profile.grade, 0);
  const curvature = takenOnLine(profile.curvature, 0);
  const entered = context.read.take('case', context.record.id, 'gradeAtPod');
  const found = context.alignment === 'tangent' ? null : curveAtPod(context).curvature;
  return [
    ...(grade === null
      ? []
      : [
          measured(
            heading(
              'lineGrade',
              'Grade at the POD by the profile of the line, uphill positive',
              entered === null ? [] : [differs(grade, entered, 'The grade entered for the POD')],
            ),
            'grade',
            grade,
          ),
        ]),
    ...(curvature === null
      ? []
      : [
          measured(
            heading(
              'lineCurvature',
              'Curvature at the POD by the profile of the line',
              found === null
                ? []
                : [
                    differs(
                      curvature,
                      { ...found, value: Math.abs(found.value) },
                      'The curvature found from the stations',
                    ),
                  ],
            ),
            'curvature',
            curvature,
          ),
        ]),
  ];
}
