import type { Stood } from '~/app/contact/stand';
import { NOMINAL_AMPLITUDE_MM } from '~/lib/contact/conicity';
import { HEAD_PARTS } from '~/lib/contact/head-part';
import { contactCurves } from '~/lib/figures/contact-curves';
import { HEAD_PART_NAMES } from '~/lib/figures/contact-picture';
import { formatMeasure } from '~/lib/readings/format';
import type { Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import { FigureBySize } from '../FigureBySize';

type Props = { readonly stood: Stood; readonly system: UnitSystem };

const SIDES = ['left', 'right'] as const;

function length(mm: number, system: UnitSystem): string {
  const unit = system === 'us' ? 'in' : 'mm';
  return formatMeasure(mm, { dimension: 'crossLength', unit, form: 'decimal', halfWidth: 0.02 });
}

const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)}°`;

function Cell<T>({ of, show }: { readonly of: Result<T>; readonly show: (value: T) => string }) {
  return <td>{of.ok ? <strong>{show(of.value)}</strong> : <span className="soft">{of.message}</span>}</td>;
}

/** What comes out over all shifts: clearance, contact angle of the flange, conicity, and where each head is loaded. */
export function ContactNumbers({ stood, system }: Props) {
  const { sweep, clearance, conicity, flangeAngle, loaded } = stood;
  return (
    <div className="stack">
      <div className="table-wrap">
        <table>
          <thead>
            <tr>
              <th scope="col">Geometry of these outlines</th>
              <th scope="col">Left</th>
              <th scope="col">Right</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Shift from the middle until the flange bears</th>
              <Cell of={clearance} show={({ leftMm }) => length(leftMm, system)} />
              <Cell of={clearance} show={({ rightMm }) => length(rightMm, system)} />
            </tr>
            <tr>
              <th scope="row">Contact angle a climbing flange has to pass</th>
              {SIDES.map((side) => (
                <Cell key={side} of={flangeAngle[side]} show={({ steepestRad }) => degrees(steepestRad)} />
              ))}
            </tr>
            <tr>
              <th scope="row">Head loaded, share of the shifts between the flanges</th>
              {SIDES.map((side) => (
                <Cell
                  key={side}
                  of={loaded[side]}
                  show={({ shares }) =>
                    HEAD_PARTS.filter((part) => shares[part] > 0)
                      .map((part) => `${HEAD_PART_NAMES[part]} ${Math.round(100 * shares[part])} %`)
                      .join(', ')
                  }
                />
              ))}
            </tr>
            <tr>
              <th scope="row">Equivalent conicity at {NOMINAL_AMPLITUDE_MM} mm</th>
              <td colSpan={2}>
                {conicity.ok ? (
                  <strong>{conicity.value.toFixed(3)}</strong>
                ) : (
                  <span className="soft">{conicity.message}</span>
                )}
              </td>
            </tr>
          </tbody>
        </table>
      </div>
      <FigureBySize
        draw={(width) =>
          contactCurves(
            { system, sweep, clearance: clearance.ok ? clearance.value : null, conicity },
            { width },
          )
        }
      />
    </div>
  );
}
