import { z } from 'zod';

const schema = z.object({
  /** 0 lets the system choose a free port. */
  FLANGEMARK_PORT: z.coerce
    .number('FLANGEMARK_PORT must be a port number, such as 8471.')
    .int()
    .min(0)
    .max(65535)
    .optional(),
  FLANGEMARK_DEMO: z.enum(['load', 'skip'], 'FLANGEMARK_DEMO must be load or skip.').default('load'),
});

export type Settings = { readonly port: number; readonly portIsFixed: boolean; readonly loadDemo: boolean };

const PREFERRED_PORT = 8471;

/** Reads the environment; throws with a message naming the variable to change. */
export function readSettings(environment: NodeJS.ProcessEnv): Settings {
  const parsed = schema.safeParse(environment);
  if (!parsed.success) throw new Error(parsed.error.issues.map((issue) => issue.message).join('\n'));
  const { FLANGEMARK_PORT: port, FLANGEMARK_DEMO: demo } = parsed.data;
  return { port: port ?? PREFERRED_PORT, portIsFixed: port !== undefined, loadDemo: demo === 'load' };
}
