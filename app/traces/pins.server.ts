import { Readable } from 'node:stream';
import { files } from '~/app/files.server';
import type { TraceMaking, TraceUncertainty } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import { ok, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import { pinPitch } from '~/lib/tracing/pin-pitch';
import { outlineFromPins, readPins, uncertaintyOfPins } from '~/lib/tracing/pins';
import type { Drawn } from './keep.server';
import { MOST_PIN_LETTERS, type PinBoxes } from './pins';

const FILE_NAME = 'typed pins.txt';

/** What pins are read in unless somebody says otherwise. */
export const USUAL_PIN_UNIT: Readonly<Record<UnitSystem, 'mm' | 'in'>> = { us: 'in', metric: 'mm' };

type PinLine = {
  readonly outline: Outline;
  readonly making: TraceMaking;
  readonly uncertainty: TraceUncertainty;
};

/** The line that typed pins make, before anything is kept. */
export function lineOfPins({ pins, pitch, unit }: PinBoxes): Result<PinLine> {
  const pitchMm = pinPitch(pitch, unit);
  if (!pitchMm.ok) return pitchMm;
  const setting = { unit, pitchMm: pitchMm.value };
  const offsets = readPins(pins, setting);
  if (!offsets.ok) return offsets;
  const outline = outlineFromPins(pins, setting);
  if (!outline.ok) return outline;
  return ok({
    outline: outline.value,
    making: { by: 'pins', entered: pins, ...setting },
    uncertainty: uncertaintyOfPins(offsets.value),
  });
}

/** The line with the typed text kept as its file. */
export async function keepPins(boxes: PinBoxes): Promise<Result<Drawn>> {
  const line = lineOfPins(boxes);
  if (!line.ok) return line;
  const text = Readable.from([Buffer.from(boxes.pins, 'utf8')]);
  // A letter takes up to four bytes.
  const stored = await files().storeStream(text, { maxBytes: 4 * MOST_PIN_LETTERS });
  if (!stored.ok) return stored;
  return ok({ ...line.value, sha256: stored.value.sha256, fileName: FILE_NAME });
}
