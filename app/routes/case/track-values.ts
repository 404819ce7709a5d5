import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { loadCase } from '~/app/case.server';
import { readOuts } from '~/app/track/chart.server';

/** What the chart shows at every station, asked for when somebody begins to read it. */
export const loader = ({ params }: LoaderFunctionArgs) => json(readOuts(loadCase(params)));
