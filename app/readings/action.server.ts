import { json, type ActionFunctionArgs } from '@remix-run/node';
import { loadCase } from '~/app/case.server';
import { readActor } from '~/app/who.server';
import { answerReadings } from './answer.server';

/** The action of a screen on which nothing but readings is sent. */
export async function readingsAction({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const answered = answerReadings(request, form, loaded, await readActor(request, loaded.record));
  return json({ answer: answered?.answer }, { status: answered?.status ?? 400 });
}
