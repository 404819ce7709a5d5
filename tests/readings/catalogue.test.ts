import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isUnitOf, widthToCanonical } from '~/lib/readings/convert';
import { formatMeasure } from '~/lib/readings/format';
import { exampleOf, parseMeasure, parseReading } from '~/lib/readings/parse';
import type { Measure, Quantity } from '~/lib/readings/quantity';
import { GROUPS } from '~/lib/readings/quantities';
import type { UnitSystem } from '~/lib/readings/unit';

const all: readonly Quantity[] = GROUPS.flatMap((group) => group.quantities);
const measures = all.filter((quantity): quantity is Measure => quantity.kind === 'measure');
const SYSTEMS: readonly UnitSystem[] = ['us', 'metric'];

describe('every measure of the catalogue', () => {
  it.each(measures.map((quantity) => [quantity.id, quantity] as const))('%s', (_, quantity) => {
    const [low, high] = quantity.possible;
    for (const system of SYSTEMS) {
      const unit = quantity.bareUnit[system];
      expect(isUnitOf(unit, quantity.dimension)).toBe(true);
      for (const example of exampleOf(quantity, system).split(' or ')) {
        expect(parseMeasure(example, quantity, system).ok, example).toBe(true);
      }
      fc.assert(
        fc.property(fc.double({ min: low, max: high, noNaN: true }), fc.boolean(), (value, withUnit) => {
          const resolution = quantity.defaultResolution.halfWidth;
          // An instruction has no resolution; it is printed to a tenth.
          const halfWidth =
            resolution > 0 ? resolution : widthToCanonical(0.05, value, unit, quantity.dimension);
          const text = formatMeasure(value, {
            dimension: quantity.dimension,
            unit,
            halfWidth: resolution,
            withUnit,
          });
          const parsed = parseMeasure(text, quantity, system);
          // Rounding may step over the edge of what is possible; inside it everything is read.
          const atEdge = Math.min(value - low, high - value) <= 2 * halfWidth;
          if (!parsed.ok) return atEdge;
          if (text !== 'tangent' && !atEdge) expect(parsed.value.unit).toBe(unit);
          return atEdge || Math.abs(parsed.value.value - value) <= halfWidth * (1 + 1e-6);
        }),
        { seed: 11, numRuns: 60 },
      );
    }
  });
});

describe('every quantity of the catalogue', () => {
  it('never throws and never accepts what is out of range', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'grapheme' }), fc.double().map(String), fc.integer().map(String)),
        fc.constantFrom(...all),
        fc.constantFrom(...SYSTEMS),
        (text, quantity, system) => {
          const parsed = parseReading(text, quantity, system);
          if (!parsed.ok) return parsed.message.length > 10;
          if (quantity.kind !== 'measure' && quantity.kind !== 'count') return parsed.value.state !== null;
          const value = parsed.value.value ?? Number.NaN;
          const slack = 1e-6 * Math.max(...quantity.possible.map(Math.abs));
          return value >= quantity.possible[0] - slack && value <= quantity.possible[1] + slack;
        },
      ),
      { seed: 12, numRuns: 2000 },
    );
  });
});
