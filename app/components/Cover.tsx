import { Form, Link, useLocation } from '@remix-run/react';
import { LOOKS, LOOK_LABELS, type Look } from '~/app/looks';

/** A flange mark running diagonally across a rail head. */
function Sign() {
  return (
    <svg viewBox="0 0 48 32" aria-hidden="true" focusable="false">
      <path d="M2 9h44v14H2z" fill="currentColor" opacity="0.85" />
      <path
        d="M5 22c11-1 24-6 38-12"
        fill="none"
        stroke="#b23f12"
        strokeWidth="3"
        strokeLinecap="round"
        strokeDasharray="8 3"
      />
    </svg>
  );
}

export function Cover({ look }: { readonly look: Look }) {
  const { pathname, search } = useLocation();
  return (
    <header className="cover">
      <div className="cover__inner">
        <Link to="/" className="cover__name">
          <Sign />
          Flangemark
        </Link>
        <nav className="cover__links" aria-label="Flangemark">
          <Link to="/">Cases</Link>
          <Link to="/methods">Methods</Link>
          <Link to="/safety">Safety</Link>
        </nav>
        {/* A whole page load: the choice must also reach pages kept by the browser. */}
        <Form method="post" action="/look" reloadDocument className="look">
          <input type="hidden" name="back" value={pathname + search} />
          <span className="visually-hidden" id="look-label">
            Colours of the pages
          </span>
          <div role="group" aria-labelledby="look-label">
            {LOOKS.map((each) => (
              <button key={each} name="look" value={each} aria-pressed={each === look}>
                {LOOK_LABELS[each]}
              </button>
            ))}
          </div>
        </Form>
      </div>
    </header>
  );
}
