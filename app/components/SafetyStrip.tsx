import { Link } from '@remix-run/react';
import { SAFETY_SHORT } from '~/lib/case/safety';

/** Stands on every page of a case. It cannot be closed. */
export function SafetyStrip() {
  return (
    <aside className="safety" aria-label="Safety notice">
      <div className="safety__inner">
        <p>
          <strong>Safety.</strong> {SAFETY_SHORT} <Link to="/safety">Full notice</Link>
        </p>
      </div>
    </aside>
  );
}
