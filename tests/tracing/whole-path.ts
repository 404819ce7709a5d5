import { followClicks } from '~/lib/tracing/follow-line';
import { outlineFromPhoto } from '~/lib/tracing/from-photo';
import { prepareImage } from '~/lib/tracing/prepare-image';
import type { Outline } from '~/lib/outline/outline';
import type { WheelFeatureId } from '~/lib/wheel/feature-table';
import { wheelFeatures } from '~/lib/wheel/features';
import { registerWheel } from '~/lib/wheel/register';
import { sceneOf, type Scene } from './scene';

const DEGREE = Math.PI / 180;

/** How close a trace must come to the wheel that was drawn; mm and rad. */
export const TOLERANCE = {
  flangeHeight: 0.5,
  flangeThickness: 0.5,
  flangeAngle: 2 * DEGREE,
  treadHollow: 0.3,
} as const satisfies Partial<Record<WheelFeatureId, number>>;

type Checked = keyof typeof TOLERANCE;
export const CHECKED = Object.keys(TOLERANCE) as readonly Checked[];

/** What a scene gave: the error of each number, or why there is none. */
export type SceneOutcome = {
  readonly seed: number;
  readonly scene: Scene;
  readonly errors: Readonly<Record<Checked, number>> | null;
  readonly why: string;
  readonly straight: readonly number[];
};

type Values = Readonly<Record<Checked, number>>;

export function valuesOf(outline: Outline): Values | string {
  const registered = registerWheel(outline, { mirrored: false });
  if (!registered.ok) return registered.message;
  const features = wheelFeatures(registered.value.outline);
  if (!features.ok) return features.message;
  const found: Partial<Record<Checked, number>> = {};
  for (const id of CHECKED) {
    const feature = features.value[id];
    if (!feature.ok) return feature.message;
    found[id] = feature.value.value;
  }
  return found as Values;
}

/** A photo traced as a user would, and the numbers of the trace beside those of the wheel that was drawn. */
export function traced(seed: number): SceneOutcome {
  const scene = sceneOf(seed);
  const image = prepareImage(scene.grey, scene.width, scene.height);
  const { path, straight, widthPx } = followClicks(image, scene.clicks);
  const size = { width: scene.width, height: scene.height };
  const made = outlineFromPhoto({ path, clicks: scene.clicks, scale: scene.scale, size, straight, widthPx });
  const truth = valuesOf(scene.truth);
  if (typeof truth === 'string') throw new Error(`Scene ${seed} draws no wheel: ${truth}`);
  const found = made.ok ? valuesOf(made.value.outline) : made.message;
  if (typeof found === 'string') return { seed, scene, errors: null, why: found, straight };
  const errors = Object.fromEntries(CHECKED.map((id) => [id, found[id] - truth[id]])) as Values;
  return { seed, scene, errors, why: '', straight };
}

export const within = ({ errors }: SceneOutcome): boolean =>
  errors !== null && CHECKED.every((id) => Math.abs(errors[id]) <= TOLERANCE[id]);
