import { createCookie } from '@remix-run/node';
import { standing } from '~/lib/case/current';
import type { CaseRecord } from '~/lib/case/record';
import type { Actor } from '~/db/actor';

export const NOBODY: Actor = { personId: null, name: 'not named' };

/** Each case has its own people, so the cookie is kept per case. */
const cookieOf = (caseId: string) =>
  createCookie('flangemark_who', {
    path: `/cases/${caseId}`,
    sameSite: 'lax',
    httpOnly: true,
    maxAge: 60 * 60 * 24 * 90,
  });

function person(record: CaseRecord, id: unknown): Actor {
  const found = standing(record, 'person').find((each) => each.id === id);
  return found ? { personId: found.id, name: String(found.fields.name) } : NOBODY;
}

/** Who is entering, as chosen in this browser for this case. */
export async function readActor(request: Request, record: CaseRecord): Promise<Actor> {
  return person(record, await cookieOf(record.id).parse(request.headers.get('Cookie')));
}

/** The header that makes this browser enter as the person from now on; an unknown id means nobody. */
export const enterAs = (record: CaseRecord, personId: unknown): Promise<string> =>
  cookieOf(record.id).serialize(person(record, personId).personId);
