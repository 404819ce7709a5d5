import type { TraceUncertainty } from '../case/trace';
import { outlineOf, type Outline } from '../outline/outline';
import { toCanonical } from '../readings/convert';
import { ok, refuse, type Result } from '../readings/result';
import { combine, standardUncertaintyFromHalfWidth } from '../readings/uncertainty';
import { readWritten, type WrittenNumber } from '../readings/written';
import { highestOf, twoDigits } from './numbers';

export type PinSetting = {
  /** Unit of a number written without one. */
  readonly unit: 'mm' | 'in';
  /** From one pin to the next, mm. */
  readonly pitchMm: number;
};

/** Offsets of the pins, mm, first pin first; null where a pin was not read. */
export type PinOffsets = {
  readonly offsetsMm: readonly (number | null)[];
  /** Half of the coarsest division the offsets were written in, mm; null where the writing does not tell. */
  readonly halfWidthMm: number | null;
};

const LONGEST_PIN_MM = 300;
const NARROWEST_PITCH_MM = 0.2;
const WIDEST_PITCH_MM = 50;
const LEAST_READ = 5;
const MOST_PINS = 2000;
/** A pin that was not read. */
const GAP = /^[-−‒–—]+$/;

const list = (entries: readonly string[]): readonly string[] => entries.map((each) => each.trim());

const ONE_TO_A_LINE = 'Put each pin on a line of its own.';

/** Typed text as one entry for each pin. Refuses what can be cut up in two ways. */
function entriesOf(entered: string): Result<readonly string[]> {
  const text = entered
    .replace(/^\uFEFF/, '')
    .replace(/[\s,;]+$/, '')
    .replace(/^\s+/, '');
  if (text === '') return refuse('No offsets are entered. Enter one for each pin, first pin first.');
  if (/[\n\r]/.test(text)) return ok(list(text.split(/\r\n|\n|\r/)));
  if (/[;\t]/.test(text)) return ok(list(text.split(/[;\t]/)));
  if (text.includes(',')) {
    const spaced = /,\s/.test(text);
    if (spaced && /\S,\S/.test(text)) {
      return refuse(
        `Some commas have a space after them and some have none, so it is not clear which stand between pins. ${ONE_TO_A_LINE}`,
      );
    }
    if (!spaced && !/[./]/.test(text)) {
      return refuse(
        `“${text.slice(0, 30)}” could be decimals or a list. Put a space after each comma between pins and a point for decimals, or each pin on a line of its own.`,
      );
    }
    return ok(list(text.split(',')));
  }
  const words = text.split(/\s+/);
  const unclear = words.findIndex(
    (word, i) => i > 0 && /^\d+\/\d+/.test(word) && /^[-+]?\d+$/.test(words[i - 1]!),
  );
  if (unclear > 0) {
    const [whole, fraction] = [words[unclear - 1]!, words[unclear]!];
    return refuse(
      `“${whole} ${fraction}” could be one pin or two. Write ${whole}-${fraction} for one, or each pin on a line of its own.`,
    );
  }
  const unit = words.find((word) => /^[a-z"'′″]+$/i.test(word));
  if (unit !== undefined)
    return refuse(
      `“${unit}” stands apart from its number. Leave the unit out, or put each pin on a line of its own.`,
    );
  return ok(words);
}

type ReadPin = { readonly mm: number; readonly halfWidthMm: number | null };

const halfWidthOf = (number: WrittenNumber, unit: 'mm' | 'in' | 'cm' | 'm' | 'ft'): number | null =>
  number.halfWidth === null || (number.kind === 'whole' && unit === 'in')
    ? null
    : toCanonical(number.halfWidth, unit, 'crossLength');

function pinOf(entry: string, unit: 'mm' | 'in'): Result<ReadPin> {
  const written = readWritten(entry, 'crossLength');
  if (!written.ok) return written;
  if (written.value.form !== 'plain') return refuse(`“${entry}”: enter inches or mm, without feet.`);
  const { number, negative, unit: own } = written.value;
  if (number.asDecimalComma !== null) return refuse(`“${entry}”: use a point for decimals.`);
  if (own === null && unit === 'mm' && number.kind === 'fraction')
    return refuse(
      `“${entry}” is a fraction, and the pins are in mm. Enter ${entry} in for inches, or the decimal in mm.`,
    );
  const used = (own ?? unit) as 'mm' | 'in' | 'cm' | 'm' | 'ft';
  const mm = toCanonical((negative ? -1 : 1) * number.value, used, 'crossLength') + 0;
  if (Math.abs(mm) > LONGEST_PIN_MM) {
    return refuse(
      `“${entry}” is ${twoDigits(mm)} mm, longer than any pin (${LONGEST_PIN_MM} mm). Check the number and the unit.`,
    );
  }
  return ok({ mm, halfWidthMm: halfWidthOf(number, used) });
}

/**
 * Offsets as typed, pin by pin: any form a reading is typed in (`../readings/written`), one to a
 * line, or on one line with semicolons, tabs, commas or spaces where that can be read in one way
 * only. `-` stands for a pin that was not read.
 *
 * Refuses, naming the pin, what cannot be read, an empty line between pins (it could be a pin left
 * out), and offsets longer than a pin. Never throws.
 */
export function readPins(entered: string, { unit }: Pick<PinSetting, 'unit'>): Result<PinOffsets> {
  const entries = entriesOf(entered);
  if (!entries.ok) return entries;
  if (entries.value.length > MOST_PINS)
    return refuse(
      `That is ${entries.value.length} pins. Enter at most ${MOST_PINS}, or import them as a file.`,
    );
  const offsets: (ReadPin | null)[] = [];
  for (const [index, entry] of entries.value.entries()) {
    if (GAP.test(entry)) offsets.push(null);
    else if (entry === '') {
      return refuse(`Pin ${index + 1} is empty. Enter its offset, or - if it was not read.`);
    } else {
      const pin = pinOf(entry, unit);
      if (!pin.ok) return refuse(`Pin ${index + 1}: ${pin.message}`);
      offsets.push(pin.value);
    }
  }
  const widths = offsets.flatMap((pin) => (pin?.halfWidthMm == null ? [] : [pin.halfWidthMm]));
  return ok({
    offsetsMm: offsets.map((pin) => pin?.mm ?? null),
    halfWidthMm: widths.length === 0 ? null : highestOf(widths),
  });
}

/**
 * The outline of typed pin offsets: pin k stands at x = k · pitch, its offset is y, upward; a pin
 * that was not read leaves a gap that the line crosses straight. mm.
 *
 * Refuses what `readPins` refuses, a pitch outside 0.2 to 50 mm, and fewer than five pins read.
 */
export function outlineFromPins(entered: string, setting: PinSetting): Result<Outline> {
  const { pitchMm } = setting;
  if (!(pitchMm >= NARROWEST_PITCH_MM && pitchMm <= WIDEST_PITCH_MM)) {
    return refuse(
      `The distance from pin to pin must be between ${NARROWEST_PITCH_MM} and ${WIDEST_PITCH_MM} mm. Measure it over ten pins and divide by ten.`,
    );
  }
  const pins = readPins(entered, setting);
  if (!pins.ok) return pins;
  const read = pins.value.offsetsMm.flatMap((y, k) => (y === null ? [] : [[k * pitchMm, y] as const]));
  if (read.length < LEAST_READ)
    return refuse(
      `Only ${read.length} ${read.length === 1 ? 'pin was' : 'pins were'} read. An outline needs at least ${LEAST_READ}; enter them first to last.`,
    );
  return ok(
    outlineOf(
      read.map(([x]) => x),
      read.map(([, y]) => y),
    ),
  );
}

/** What a pin gauge is good for, half-width, mm: 1/16 in. Common practice, no source. */
const PIN_GAUGE_HALF_WIDTH_MM = 25.4 / 16;
/** The pitch is counted over many pins. Common practice, no source. */
const PITCH_SHARE = 0.002;

/**
 * How well pins stand for the shape, k = 1: the gauge, ±1/16 in (common practice, no source), which
 * includes where on its end a pin touches; and the division the offsets were written in.
 */
export function uncertaintyOfPins({ halfWidthMm }: PinOffsets): TraceUncertainty {
  const gauge = standardUncertaintyFromHalfWidth(PIN_GAUGE_HALF_WIDTH_MM);
  const written = standardUncertaintyFromHalfWidth(halfWidthMm ?? 0);
  return {
    acrossMm: combine(gauge, written),
    scale: PITCH_SHARE,
    because: [
      `Pin gauge, ±1/16 in (common practice, no source): ${twoDigits(gauge)} mm.`,
      ...(halfWidthMm === null
        ? []
        : [`Offsets written to ±${twoDigits(halfWidthMm)} mm: ${twoDigits(written)} mm.`]),
      `Pitch known to ${twoDigits(100 * PITCH_SHARE)} % (common practice, no source). Steep parts lie between pins and are known only there.`,
    ],
  };
}
