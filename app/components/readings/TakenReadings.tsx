import { Link } from '@remix-run/react';
import type { TakenReading } from '~/app/readings/view.server';

/** The readings that stand in one place, each leading to where it came from. */
export function TakenReadings({
  caseId,
  readings = [],
}: {
  readonly caseId: string;
  readonly readings?: readonly TakenReading[];
}) {
  if (readings.length === 0) return null;
  return (
    <ul className="plain-list cell__taken">
      {readings.map(({ id, text }) => (
        <li key={id}>
          <Link to={`/cases/${caseId}/readings/${id}`}>
            <span className="visually-hidden">Read: </span>
            {text}
          </Link>
        </li>
      ))}
    </ul>
  );
}
