import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { LabelledInput } from '~/app/components/LabelledInput';
import { LabelledSelect } from '~/app/components/LabelledSelect';
import { LabelledText } from '~/app/components/LabelledText';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { Draft } from '~/app/components/traces/Draft';
import { SaidFields } from '~/app/components/traces/SaidFields';
import { useRedraw } from '~/app/components/traces/use-redraw';
import { systemOf } from '~/app/readings/take.server';
import { readingsChoices } from '~/app/readings/view.server';
import { aboutView, askedAbout } from '~/app/traces/asked.server';
import { keepTrace } from '~/app/traces/keep.server';
import { HELD_SQUARE, PIN_ORDER } from '~/app/traces/how-to-trace';
import { draftView } from '~/app/traces/picture.server';
import { MOST_PIN_LETTERS, readPinBoxes } from '~/app/traces/pins';
import { keepPins, lineOfPins, USUAL_PIN_UNIT } from '~/app/traces/pins.server';
import { firstBoxes, readNewSaid, sentBoxes } from '~/app/traces/said.server';
import { readActor } from '~/app/who.server';
import { ok } from '~/lib/readings/result';

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record } = loaded;
  const search = new URL(request.url).searchParams;
  const about = askedAbout(loaded, search);
  const system = systemOf(record.fields);
  const pins = readPinBoxes(search, USUAL_PIN_UNIT[system]);
  const line = pins.pins.trim() === '' ? null : lineOfPins(pins);
  const actor = await readActor(request, record);
  return json({
    about: aboutView(loaded, about),
    pins,
    draft: line && draftView(line.ok ? ok(line.value.outline) : line, about.shape, system),
    boxes: search.has('pins') ? sentBoxes(search) : firstBoxes(actor),
    choices: readingsChoices(loaded),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { caseId, record } = loaded;
  const form = await request.formData();
  const search = new URLSearchParams({ about: String(form.get('about') ?? '') });
  const about = askedAbout(loaded, search);
  const pins = readPinBoxes(form, USUAL_PIN_UNIT[systemOf(record.fields)]);
  const { said, errors } = readNewSaid(form, record, about.shape);
  const refused = (error: string | null) =>
    json({ error, errors, pins, boxes: sentBoxes(form) }, { status: 422 });
  if (Object.keys(errors).length > 0) return refused(null);
  const drawn = await keepPins(pins);
  if (!drawn.ok) return refused(drawn.message);
  const kept = keepTrace(loaded, about, drawn.value, said, form, await readActor(request, record));
  return kept.ok ? redirect(`/cases/${caseId}/traces/${kept.value}`) : refused(kept.message);
}

const UNITS = [
  { id: 'in', label: 'inches' },
  { id: 'mm', label: 'mm' },
];

export default function TraceFromPins() {
  const data = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const redraw = useRedraw();
  const { about, draft, choices } = data;
  const pins = answer?.pins ?? data.pins;
  const errors: Readonly<Record<string, string>> = answer?.errors ?? {};
  return (
    <Page
      title="Outline from a pin gauge"
      intro={`${about.name}. Nothing is in the case until you keep it.`}
      actions={<Link to={about.back}>Back to what it is of</Link>}
    >
      <Sheet title="The pins">
        {answer?.error && <Message tone="bad">{answer.error}</Message>}
        {Object.keys(errors).length > 0 && (
          <Message tone="bad">Something below cannot be read; everything you entered is still there.</Message>
        )}
        {about.shape === 'point' && <p className="soft">{HELD_SQUARE}</p>}
        <Form method="post" className="form" {...redraw} noValidate>
          <input type="hidden" name="about" value={about.key} />
          <div className="beside beside--even">
            <div className="stack">
              <LabelledText
                id="pins"
                name="pins"
                label="How far each pin stands out"
                help={PIN_ORDER[about.shape]}
                value={pins.pins}
                rows={8}
                maxLength={MOST_PIN_LETTERS}
              />
              <div className="form__grid">
                <LabelledInput
                  id="pitch"
                  name="pitch"
                  label="From one pin to the next"
                  help="Such as 1/16 in or 1.5 mm."
                  value={pins.pitch}
                  maxLength={30}
                />
                <LabelledSelect
                  id="unit"
                  name="unit"
                  label="Offsets are in"
                  value={pins.unit}
                  options={UNITS}
                />
              </div>
              <div>
                <button className="button" formMethod="get">
                  Draw it
                </button>
              </div>
            </div>
            {draft ? <Draft draft={draft} /> : <p className="soft">The line is drawn here.</p>}
          </div>
          <SaidFields
            isNew
            shape={about.shape}
            choices={choices}
            values={answer?.boxes ?? data.boxes}
            errors={errors}
          />
          <div>
            <button className="button button--main">Keep this outline</button>
          </div>
        </Form>
      </Sheet>
    </Page>
  );
}
