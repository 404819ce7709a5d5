import { fold } from './fold';
import { refuse, ok, type Result } from './result';
import { splitUnit } from './spelling';
import { DIMENSIONS, type Dimension, type Unit } from './unit';

/**
 * A number as written. `halfWidth` is half of the last place or of the fraction's denominator, in
 * the unit it stands in; null where the writing does not tell (a whole number of inches is as often
 * "to the nearest eighth" as "to the inch"; trailing zeros may be read or rounded).
 */
export type WrittenNumber = {
  readonly value: number;
  readonly kind: 'whole' | 'decimal' | 'fraction';
  readonly halfWidth: number | null;
  /** Set when a comma stood in it: what it would be if the comma were a decimal sign. */
  readonly asDecimalComma: number | null;
};

export type Written =
  | {
      readonly form: 'plain';
      readonly negative: boolean;
      readonly number: WrittenNumber;
      readonly unit: Unit | null;
      readonly spelling: string;
    }
  | {
      readonly form: 'feetInches';
      readonly negative: boolean;
      readonly feet: number;
      readonly inches: WrittenNumber;
    }
  | {
      readonly form: 'degreesMinutes';
      readonly negative: boolean;
      readonly degrees: number;
      readonly halfWidth: number | null;
    }
  | { readonly form: 'straight' };

const LONGEST = 60;
const shown = (text: string): string => `“${text.trim().slice(0, LONGEST)}”`;

const isLength = (dimension: Dimension): boolean => dimension === 'crossLength' || dimension === 'alongTrack';
const isDegrees = (dimension: Dimension): boolean => dimension === 'angle' || dimension === 'curvature';

function readDecimal(text: string): WrittenNumber {
  const point = text.indexOf('.');
  const places = point < 0 ? 0 : text.length - point - 1;
  const value = Number(text.replace(/\.$/, ''));
  if (places === 0) {
    const halfWidth = /0$/.test(text.replace(/\.$/, '')) ? null : 0.5;
    return { value, kind: 'whole', halfWidth, asDecimalComma: null };
  }
  return { value, kind: 'decimal', halfWidth: 0.5 * 10 ** -places, asDecimalComma: null };
}

const RULER_DENOMINATORS = [2, 4, 8, 16, 32, 64, 128];

function readFraction(
  original: string,
  whole: string,
  numerator: string,
  denominator: string,
): Result<WrittenNumber> {
  const top = Number(numerator);
  const bottom = Number(denominator);
  const fraction = `${numerator}/${denominator}`;
  if (bottom === 0) {
    return refuse(
      `${shown(original)}: a fraction cannot have zero below the line. Enter the fraction as read, such as 3/16.`,
    );
  }
  if (!RULER_DENOMINATORS.includes(bottom)) {
    return refuse(
      `${shown(original)}: no ruler is divided in ${bottom} parts. Enter halves, quarters, eighths, sixteenths, thirty-seconds, sixty-fourths or 128ths, or a decimal.`,
    );
  }
  if (top === 0) return refuse(`${shown(original)}: leave out ${fraction}, or enter 0 for nothing.`);
  if (top >= bottom) {
    const carried = Number(whole) + Math.floor(top / bottom);
    const rest = top % bottom;
    const meant = rest === 0 ? `${carried}` : `${carried} ${rest}/${bottom}`;
    return refuse(`${shown(original)}: ${fraction} is not less than one. If you mean it, enter ${meant}.`);
  }
  return ok({
    value: Number(whole) + top / bottom,
    kind: 'fraction',
    halfWidth: 0.5 / bottom,
    asDecimalComma: null,
  });
}

function readCommas(original: string, text: string): Result<WrittenNumber> {
  const [whole = '', decimals] = text.split('.');
  const groups = whole.split(',');
  const grouped = /^[1-9]\d{0,2}(,\d{3})+$/.test(whole);
  if (!grouped || text.split('.').length > 2) {
    return refuse(
      `${shown(original)}: use a point for decimals, such as ${
        /^\d+,\d+$/.test(text) ? text.replace(',', '.') : '3.5'
      }; no comma is needed anywhere.`,
    );
  }
  const plain = groups.join('') + (decimals === undefined ? '' : `.${decimals}`);
  const couldBeDecimal = groups.length === 2 && decimals === undefined;
  return ok({
    ...readDecimal(plain),
    asDecimalComma: couldBeDecimal ? Number(groups.join('.')) : null,
  });
}

/** An unsigned number without unit: whole, decimal, fraction, or whole and fraction. */
function readNumber(original: string, text: string): Result<WrittenNumber> {
  if (/\d{10}/.test(text))
    return refuse(`${shown(original)}: that has too many digits. Check the number and enter it again.`);
  if (/^(\d+\.?\d*|\.\d+)$/.test(text)) return ok(readDecimal(text));

  const fraction = /^(?:(\d+)(?: |-))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction) return readFraction(original, fraction[1] ?? '0', fraction[2] ?? '', fraction[3] ?? '');

  const threeNumbers = /^(\d+)[ -](\d+)[ -](\d+)$/.exec(text);
  if (threeNumbers) {
    const [, whole, top, bottom] = threeNumbers;
    return refuse(
      `${shown(original)}: that is three numbers. If you mean a fraction, enter ${whole} ${top}/${bottom}.`,
    );
  }
  if (/^[\d.,]*,[\d.,]*$/.test(text)) return readCommas(original, text);
  if (/^\d+ ?- ?\d+ ?\/ ?\d+$/.test(text)) {
    return refuse(
      `${shown(original)}: is the dash a minus or a joint? Enter it as ${text.replace(/ ?- ?/, ' ')}.`,
    );
  }
  if (/^\d+\.\d+[ -]\d+ ?\/ ?\d+$/.test(text)) {
    return refuse(
      `${shown(original)}: a decimal and a fraction do not go together. Enter one of them, such as 56.75 or 56 3/4.`,
    );
  }
  if (/^[\d./]+( ?- ?| )[\d./ ]+$/.test(text)) {
    return refuse(
      `${shown(original)}: that is two numbers. Enter one reading; take a second reading on its own line.`,
    );
  }
  if (/\d.*[a-z'"°%].*\d/.test(text)) {
    return refuse(
      `${shown(original)}: that mixes units or holds two readings. Enter one number with one unit, or feet and inches as 4' 8 1/2".`,
    );
  }
  return refuse(`${shown(original)} is not a number. Enter digits only, with a unit if you like.`);
}

const FEET_INCHES =
  /^(\d[\d.,]*(?:[ -]\d+ ?\/ ?\d+)?) ?(?:'|ft\.?|feet|foot)( ?- ?| )?([\d.].*?) ?("|in\.?|inch|inches)?$/;

function readFeetInches(original: string, text: string, negative: boolean): Result<Written> | null {
  const parts = FEET_INCHES.exec(text);
  if (!parts) return null;
  const [, feet = '', joint = '', rest = ''] = parts;
  if (/[a-z'"°%]/.test(rest)) return null;
  if (!/^\d{1,6}$/.test(feet)) {
    return refuse(
      `${shown(original)}: enter whole feet before the inches, such as 15' 6", or all of it in one unit.`,
    );
  }
  if (joint === ' -' || joint === '- ') {
    return refuse(`${shown(original)}: is the dash a minus or a joint? Enter it as ${feet}' ${rest}".`);
  }
  const inches = readNumber(original, rest);
  if (!inches.ok) return inches;
  const wholeInches = /^\d+/.exec(rest)?.[0] ?? '0';
  if (inches.value.value >= 12 || wholeInches.length > 2) {
    return refuse(
      `${shown(original)}: inches after feet are less than 12. Enter it again, or all of it in inches.`,
    );
  }
  return ok({ form: 'feetInches', negative, feet: Number(feet), inches: inches.value });
}

function readDegreesMinutes(original: string, text: string, negative: boolean): Result<Written> | null {
  if (/^\d+ ?° ?\d+(\.\d+)?$/.test(text)) {
    return refuse(
      `${shown(original)}: mark the minutes, such as 7°30', or enter decimal degrees, such as 7.5°.`,
    );
  }
  const parts = /^(\d{1,6}) ?° ?(\d{1,2}(?:\.\d{1,6})?) ?'(?: ?(\d{1,2}(?:\.\d{1,6})?) ?")?$/.exec(text);
  if (!parts) return null;
  const [, degrees = '', minutesText = '', secondsText] = parts;
  const minutes = readDecimal(minutesText);
  const seconds = secondsText === undefined ? null : readDecimal(secondsText);
  if (minutes.value >= 60 || (seconds !== null && seconds.value >= 60)) {
    return refuse(`${shown(original)}: minutes and seconds are less than 60. Enter it again.`);
  }
  if (seconds !== null && minutes.kind === 'decimal') {
    return refuse(`${shown(original)}: enter whole minutes before seconds.`);
  }
  return ok({
    form: 'degreesMinutes',
    negative,
    degrees: Number(degrees) + minutes.value / 60 + (seconds?.value ?? 0) / 3600,
    halfWidth:
      seconds === null
        ? minutes.halfWidth === null
          ? null
          : minutes.halfWidth / 60
        : seconds.halfWidth === null
          ? null
          : seconds.halfWidth / 3600,
  });
}

function unknownUnit(original: string, text: string, dimension: Dimension): Result<never> | null {
  const found = /^[\d.,/ -]*\d\.? ?([^\d\s.,/-].*)$/.exec(text);
  const word = found?.[1];
  if (word === undefined || /\d/.test(word)) return null;
  const units = DIMENSIONS[dimension].units.filter((unit) => unit !== '1');
  return refuse(
    units.length === 0
      ? `${shown(original)}: enter the number alone; it has no unit.`
      : `${shown(original)}: “${word.slice(0, 20)}” is not a unit for this. Use ${units.join(', ')}, or the number alone.`,
  );
}

/**
 * What was typed, taken apart but not yet given a meaning: sign, number, unit. Refuses whatever
 * can be read in two ways, saying what to enter instead. Never throws.
 */
export function readWritten(original: string, dimension: Dimension): Result<Written> {
  if (original.length > LONGEST) {
    return refuse(
      `${shown(original)}… is too long for one reading. Enter one number; the rest goes in the note.`,
    );
  }
  const text = fold(original);
  if (text === '') return refuse('Nothing is entered. Enter a number, or leave the line out.');
  if (dimension === 'curvature' && /^(tangent|straight)$/.test(text)) return ok({ form: 'straight' });
  if (/±|\+\/?-/.test(text)) {
    return refuse(
      `${shown(original)}: enter the reading alone. How well it is known comes from the instrument and the note.`,
    );
  }
  if (/[~<>?≈≤≥]|about|approx/.test(text)) {
    return refuse(`${shown(original)}: enter the number alone and put the doubt in the note.`);
  }
  const sign = /^([+-]) ?/.exec(text);
  const negative = sign?.[1] === '-';
  const unsigned = sign ? text.slice(sign[0].length) : text;

  const compound = isLength(dimension)
    ? readFeetInches(original, unsigned, negative)
    : isDegrees(dimension)
      ? readDegreesMinutes(original, unsigned, negative)
      : null;
  if (compound) return compound;

  // A bare degree sign on a thermometer reading says nothing of the scale.
  const body = dimension === 'temperature' ? unsigned.replace(/ ?°$/, '') : unsigned;
  const split = splitUnit(body, dimension);
  const unknown = split ? null : unknownUnit(original, body, dimension);
  if (unknown) return unknown;
  const number = readNumber(original, split?.number ?? body);
  if (!number.ok) return number;
  return ok({
    form: 'plain',
    negative,
    number: number.value,
    unit: split?.unit ?? null,
    spelling: split?.spelling ?? '',
  });
}
