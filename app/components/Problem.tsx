import { isRouteErrorResponse, Link } from '@remix-run/react';

type Words = { readonly title: string; readonly text: string };

function wordsFor(error: unknown): Words {
  if (isRouteErrorResponse(error)) {
    const said = typeof error.data === 'string' && error.data !== '' ? error.data : null;
    if (error.status === 404) {
      return {
        title: 'Not found',
        text: said ?? 'There is no such page. Check the address, or start from the list of cases.',
      };
    }
    return { title: `Refused (${error.status})`, text: said ?? 'The request could not be carried out.' };
  }
  return {
    title: 'Something in the program went wrong',
    text:
      'What was saved before is still saved. Go back and try again; what you had typed is still in your ' +
      'browser’s page. If it happens again, the window in which Flangemark was started shows the details.',
  };
}

/** What went wrong, in words, and where to go on. */
export function Problem({ error }: { readonly error: unknown }) {
  const { title, text } = wordsFor(error);
  return (
    <section className="sheet" aria-labelledby="problem-title">
      <h1 id="problem-title">{title}</h1>
      <p>{text}</p>
      <p>
        <Link to="/">List of cases</Link>
      </p>
    </section>
  );
}
