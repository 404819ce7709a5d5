import { redirect, type LoaderFunctionArgs } from '@remix-run/node';

export const loader = ({ params }: LoaderFunctionArgs): Response =>
  redirect(`/cases/${params.caseId}/overview`);
