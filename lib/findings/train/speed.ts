import { asReadMethod } from '../as-read';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import { limitCheck } from '../limit-check';
import type { Taken } from '../reading-index';

/** Speed at the POD against the authorised speed and the most the class of track allows freight trains. */
export function speedFindings(context: Context): readonly Finding[] {
  const heading: Heading = {
    part: 'train',
    method: asReadMethod,
    what: 'speedAtPod',
    title: 'Speed at the POD',
    subject: null,
  };
  const speed = context.speedAtPod;
  return speed === null
    ? [notMeasured(heading, ['speed at the POD, from the recorder or as reported'])]
    : [measured(heading, 'speed', speed, limits(context, speed))];
}

function limits(context: Context, { value, u }: Taken): readonly LimitCheck[] {
  const { track, trackClass } = context.rules;
  const authorised = context.read.take('case', context.record.id, 'authorisedSpeed');
  const forClass = trackClass?.freightSpeedMs;
  return [
    ...(authorised === null
      ? []
      : [
          limitCheck({
            name: 'Authorised speed',
            citation: 'Timetable, bulletins and signals in force, as recorded',
            sense: 'max',
            limit: authorised.value,
            source: { text: 'Authorised speed as recorded for the case', status: 'published' },
            value,
            u,
          }),
        ]),
    ...(track === undefined || trackClass === undefined || forClass === undefined || forClass === null
      ? []
      : [
          limitCheck({
            name: `Freight trains, ${trackClass.label}`,
            citation: track.classSpeeds?.citation ?? track.name,
            sense: 'max',
            limit: forClass,
            source: track.classSpeeds?.source ?? { text: track.edition, status: 'from memory' },
            value,
            u,
          }),
        ]),
  ];
}
