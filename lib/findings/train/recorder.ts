import { accelerationMethod } from '../../train/acceleration';
import { slackMethod, slackRule, type SlackEvent } from '../../train/slack-events';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import type { NonEmpty } from '../reading-index';

/** Acceleration at the POD, and how often slack ran in or out in the minute before it. */
export function recorderFindings(context: Context): readonly Finding[] {
  const { recorder } = context;
  if (recorder === null) return [];
  const { acceleration, slack, remark } = recorder;
  const readings: NonEmpty<string> = [recorder.runId, ...recorder.placedBy];
  const heading = (what: string, title: string, method: Heading['method']): Heading => ({
    part: 'train',
    what,
    title,
    method,
    subject: null,
  });
  const slowing = heading(
    'accelerationAtPod',
    'Acceleration at the POD, share of gravity, speeding up positive',
    accelerationMethod,
  );
  return [
    Number.isFinite(acceleration.value)
      ? measured(slowing, 'ratio', {
          value: acceleration.value / STANDARD_GRAVITY,
          u: acceleration.u / STANDARD_GRAVITY,
          readings,
          remarks: [remark],
        })
      : notMeasured(slowing, ['speed in four samples within six seconds of the POD']),
    measured(heading('slackEvents', 'Slack events in the minute before the POD', slackMethod), 'count', {
      value: slack.length,
      u: 0,
      readings,
      remarks: [slackRule, remark, ...slack.map((event) => said(event, recorder.timeS))],
    }),
  ];
}

/** m/s² (3rd CGPM, 1901; NIST SP 811). */
const STANDARD_GRAVITY = 9.80665;

function said({ kind, timeS, change }: SlackEvent, podTimeS: number): string {
  const when = `${(podTimeS - timeS).toFixed(0)} s before the POD`;
  return kind === 'handling'
    ? `${when}: power and dynamic brake changed over.`
    : `${when}: the speed bent ${change > 0 ? 'up (slack running in from behind, or power)' : 'down (slack running out, or brake)'} by ${Math.abs(change).toFixed(2)} m/s².`;
}
