import { reversed } from '~/lib/outline/arc';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { placed, type Placing } from '~/lib/outline/placing';
import { freightEarlier } from '~/lib/shapes/wheels/freight-earlier';
import { freightNarrow } from '~/lib/shapes/wheels/freight-narrow';
import { s1002 } from '~/lib/shapes/wheels/s1002';
import { outlineOfShape } from '~/lib/shapes/shape';
import { wheelFeatures } from '~/lib/wheel/features';
import { type WheelFeatureId } from '~/lib/wheel/feature-table';
import { registerWheel } from '~/lib/wheel/register';

export const NEW_WHEELS = [s1002, freightNarrow, freightEarlier] as const;

export const newWheel = (id: (typeof NEW_WHEELS)[number]['id'], stepMm = 0.4): Outline => {
  const shape = NEW_WHEELS.find((each) => each.id === id);
  if (shape === undefined) throw new Error(id);
  return outlineOfShape(shape, stepMm);
};

/** How much of the wear there is at a place across the tread: none at 48 and 116 mm, all of it at 82. */
const worn = (xMm: number): number =>
  xMm < 48 || xMm > 116 ? 0 : Math.cos((Math.PI * (xMm - 82)) / 68) ** 2;

/** A freight wheel with a band worn out of its tread, this deep at its middle. y = 0 stays that of the new wheel. */
export function hollowWheel(depthMm: number): Outline {
  const { xMm, yMm } = newWheel('freight-narrow');
  const tip = yMm.indexOf(Math.max(...yMm));
  return outlineOf(
    xMm,
    yMm.map((y, i) => (i > tip ? y - depthMm * worn(xMm[i]!) : y)),
  );
}

/** Drawn some other way: moved, and then in the other order if asked. */
export const drawn = (outline: Outline, placing: Placing, endForEnd: boolean): Outline => {
  const moved = placed(outline, placing);
  return endForEnd ? reversed(moved) : moved;
};

/** The features of a drawn line, registered first; throws where something is refused. */
export function featuresFrom(outline: Outline, mirrored = false): Record<WheelFeatureId, number> {
  const registered = registerWheel(outline, { mirrored });
  if (!registered.ok) throw new Error(registered.message);
  const features = wheelFeatures(registered.value.outline);
  if (!features.ok) throw new Error(features.message);
  return Object.fromEntries(
    Object.entries(features.value).map(([id, feature]) => [id, feature.ok ? feature.value.value : NaN]),
  ) as Record<WheelFeatureId, number>;
}
