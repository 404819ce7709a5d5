import { Form } from '@remix-run/react';
import type { HandBoxes } from '~/app/traces/hand';
import type { TracedShape } from '~/lib/case/trace';
import { LabelledInput } from '../LabelledInput';
import { useRedraw } from './use-redraw';

type Props = {
  readonly shape: TracedShape;
  /** The shape it is laid over, kept while trying. */
  readonly over: string;
  readonly values: HandBoxes;
  readonly errors?: Readonly<Record<string, string>>;
};

const MIRRORED: Readonly<Record<TracedShape, string>> = {
  wheel: 'The drawing is a mirror image',
  rail: 'The gauge side is at the right of the drawing',
  point: 'The gauge side is at the left of the drawing',
};

/** Corrects how an outline lies. Trying it shows the result; keeping it needs a reason. */
export function HandForm({ shape, over, values, errors = {} }: Props) {
  const redraw = useRedraw();
  return (
    <Form method="post" className="form" {...redraw} noValidate>
      <input type="hidden" name="intent" value="hand" />
      <input type="hidden" name="over" value={over} />
      <input type="hidden" name="trying" value="1" />
      <div className="form__grid">
        <LabelledInput
          id="hand-dx"
          name="dx"
          label={`Move to the ${shape === 'point' ? 'gauge' : 'field'} side, mm`}
          inputMode="decimal"
          value={values.dx}
          error={errors.dx}
          maxLength={10}
        />
        <LabelledInput
          id="hand-dy"
          name="dy"
          label="Move up, mm"
          inputMode="decimal"
          value={values.dy}
          error={errors.dy}
          maxLength={10}
        />
        <LabelledInput
          id="hand-angle"
          name="angle"
          label="Turn counter-clockwise, degrees"
          inputMode="decimal"
          value={values.angle}
          error={errors.angle}
          maxLength={10}
        />
      </div>
      <label className="check">
        <input type="checkbox" name="mirror" defaultChecked={values.mirror !== ''} />
        {MIRRORED[shape]}
      </label>
      <div className="shared">
        <LabelledInput
          id="hand-reason"
          name="reason"
          label="Reason for moving it"
          value={values.reason}
          error={errors.reason}
        />
      </div>
      <div className="row">
        <button className="button button--main">Keep it so</button>
        <button className="button" formMethod="get">
          Try it
        </button>
      </div>
    </Form>
  );
}
