import { redirect, type ActionFunctionArgs } from '@remix-run/node';
import { localPath } from '~/app/local-path';
import { lookHeader } from '~/app/look.server';

export async function action({ request }: ActionFunctionArgs): Promise<Response> {
  const form = await request.formData();
  return redirect(localPath(form.get('back'), '/'), {
    headers: { 'Set-Cookie': await lookHeader(form.get('look')) },
  });
}

export const loader = (): Response => redirect('/');
