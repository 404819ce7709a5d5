import type { LoadedCase } from '~/app/case.server';
import { systemOf } from '~/app/readings/take.server';
import { runJob } from '~/app/work/worker.server';
import type { Trace } from '~/lib/case/trace';
import { canonicalJson, sha256Hex } from '~/lib/custody/canonical';
import { formatWithUncertainty } from '~/lib/readings/format';
import type { UnitSystem } from '~/lib/readings/unit';
import { computeFeatures } from './compute-features.server';
import type { FeatureValues } from './feature-values';

/** Inches as fractions where they are known no better, as everywhere on the screens. */
const FORM = 'fraction';

const KEPT = 256;
const cache = new Map<string, Promise<FeatureValues>>();

/** Everything the features depend on: another note or another name does not compute them anew. */
function contentKey({ record, caseId }: LoadedCase, trace: Trace): string {
  const { shape, mirrored, hand, uncertainty, id, making } = trace;
  const plumb = making.plumb === true;
  const rail = record.entities.rail.find((each) => each.id === trace.subject.id);
  const section = String(rail?.fields.section ?? '');
  const points = sha256Hex(new Uint8Array(trace.pointsMm.buffer));
  const units = systemOf(record.fields);
  return sha256Hex(
    canonicalJson({ caseId, id, units, plumb, shape, mirrored, hand, uncertainty, section, points }),
  );
}

/** What is taken from an outline: computed in the worker, once for one content. */
export function featureValues(loaded: LoadedCase, trace: Trace): Promise<FeatureValues> {
  // A point takes some milliseconds, less than asking the worker.
  if (trace.shape === 'point') return Promise.resolve(computeFeatures(loaded.record, trace));
  const key = contentKey(loaded, trace);
  const known = cache.get(key);
  if (known !== undefined) {
    cache.delete(key);
    cache.set(key, known);
    return known;
  }
  const running = runJob({ kind: 'outline', caseId: loaded.caseId, traceId: trace.id });
  cache.set(key, running);
  running.catch(() => cache.delete(key));
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return running;
}

export type FeatureRow = {
  readonly id: string;
  readonly name: string;
  readonly meaning: string;
  /** Value with U (k = 2) in the units of the case; null where it could not be taken. */
  readonly text: string | null;
  readonly missing: string;
};

export type FeaturesView =
  | { readonly ok: true; readonly rows: readonly FeatureRow[] }
  | { readonly ok: false; readonly problem: string };

/** The features in words. */
export const featuresView = (values: FeatureValues, system: UnitSystem): FeaturesView =>
  values.ok
    ? {
        ok: true,
        rows: values.features.map(({ id, name, meaning, dimension, found }) => ({
          id,
          name,
          meaning,
          text:
            'value' in found
              ? formatWithUncertainty(found.value, found.u, dimension, system, { form: FORM })
              : null,
          missing: 'missing' in found ? found.missing : '',
        })),
      }
    : values;

const traceFeatures = async (loaded: LoadedCase, trace: Trace): Promise<FeaturesView> =>
  featuresView(await featureValues(loaded, trace), systemOf(loaded.record.fields));

const PATIENCE_MS = 60;

/** The features of an outline, or null while they are being computed: a list does not wait for them. */
export async function traceFeaturesSoon(loaded: LoadedCase, trace: Trace): Promise<FeaturesView | null> {
  const later = new Promise<null>((resolve) => {
    setTimeout(() => resolve(null), PATIENCE_MS).unref();
  });
  return Promise.race([traceFeatures(loaded, trace), later]);
}
