import { redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { loadCase } from '~/app/case.server';
import { localPath } from '~/app/local-path';
import { enterAs } from '~/app/who.server';

export async function action({ request, params }: ActionFunctionArgs): Promise<Response> {
  const { record } = loadCase(params);
  const form = await request.formData();
  return redirect(localPath(form.get('back'), `/cases/${record.id}/overview`), {
    headers: { 'Set-Cookie': await enterAs(record, form.get('person')) },
  });
}

export const loader = ({ params }: LoaderFunctionArgs): Response =>
  redirect(`/cases/${params.caseId}/overview`);
