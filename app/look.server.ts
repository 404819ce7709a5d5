import { createCookie } from '@remix-run/node';
import { z } from 'zod';
import { LOOKS, type Look } from './looks';

const lookSchema = z.enum(LOOKS).catch('auto');

const cookie = createCookie('flangemark_look', { path: '/', sameSite: 'lax', maxAge: 60 * 60 * 24 * 365 });

export async function readLook(request: Request): Promise<Look> {
  return lookSchema.parse(await cookie.parse(request.headers.get('Cookie')));
}

export const lookHeader = (look: unknown): Promise<string> => cookie.serialize(lookSchema.parse(look));
