import { z } from 'zod';
import { refuse, ok, type Result } from '../readings/result';
import { parseDate, parseDateTime } from './calendar';
import type { Field, Kind } from './kind';
import type { Entity } from './record';

type FieldValue = Entity['fields'][string];

const YES = new Set(['on', 'yes', 'true', '1', 'y', 'x']);
const NO = new Set(['off', 'no', 'false', '0', 'n']);

/**
 * One cell of a form or a file as the value of its field: text is trimmed and an empty cell is
 * null. A refusal says what to enter instead.
 */
export function parseField(field: Field, raw: unknown): Result<FieldValue> {
  const text = asText(raw);
  if (text === null) return refuse(`Enter one value for ${named(field)}.`);
  if (text === '') return field.required ? refuse(`${field.label} is needed. ${askFor(field)}`) : ok(null);
  switch (field.type) {
    case 'text':
      return parseText(field, text);
    case 'integer':
      return parseInteger(field, text);
    case 'flag': {
      const word = text.toLowerCase();
      return YES.has(word) ? ok(true) : NO.has(word) ? ok(false) : refuse(askFor(field));
    }
    case 'choice': {
      const word = text.toLowerCase();
      const choice =
        field.choices.find((entry) => entry.id === text) ??
        field.choices.find(
          ({ id, label, alsoSaid }) =>
            id.toLowerCase() === word || label.toLowerCase() === word || alsoSaid?.includes(word),
        );
      return choice ? ok(choice.id) : refuse(askFor(field));
    }
    case 'date': {
      const date = parseDate(text);
      return date === null ? refuse(askFor(field)) : ok(date);
    }
    case 'dateTime': {
      const dateTime = parseDateTime(text);
      return dateTime === null ? refuse(askFor(field)) : ok(dateTime);
    }
    case 'ref':
      return /^\S{1,64}$/.test(text) ? ok(text) : refuse(askFor(field));
  }
}

/** Text of a cell, ends trimmed, lines ended by \n alone; null when it is not one value. */
function asText(raw: unknown): string | null {
  if (raw === undefined || raw === null) return '';
  if (typeof raw === 'boolean') return raw ? 'yes' : 'no';
  if (typeof raw === 'number') return String(raw);
  return typeof raw === 'string' ? raw.replace(/\r\n?/g, '\n').trim() : null;
}

function parseText(field: Extract<Field, { type: 'text' }>, text: string): Result<FieldValue> {
  // A lone surrogate or a control character would not survive storage unchanged.
  const kept = text.replace(/[\p{Surrogate}\u0000-\u0008\u000b-\u001f\u007f]/gu, '');
  const value = field.long ? kept : kept.replace(/\s*\n\s*/g, ' ');
  if (field.maxLength !== undefined && value.length > field.maxLength)
    return refuse(
      `${field.label} has ${value.length} characters. Shorten it to ${field.maxLength} or fewer.`,
    );
  return ok(value);
}

function parseInteger(field: Extract<Field, { type: 'integer' }>, text: string): Result<FieldValue> {
  // Spreadsheets write whole numbers as 12.0.
  if (!/^[+-]?\d{1,15}(\.0*)?$/.test(text)) return refuse(askFor(field));
  const value = Number(text) + 0;
  return value < field.min || value > field.max ? refuse(askFor(field)) : ok(value);
}

const named = (field: Field): string => `“${field.label}”`;

function askFor(field: Field): string {
  switch (field.type) {
    case 'text':
      return field.help ? `Enter it: ${field.help}` : 'Enter it here.';
    case 'integer':
      return `Enter a whole number from ${field.min} to ${field.max}.`;
    case 'flag':
      return 'Enter yes or no.';
    case 'choice':
      return `Enter one of: ${field.choices.map((choice) => choice.label).join('; ')}.`;
    case 'date':
      return 'Enter the date as year-month-day, such as 2031-04-09.';
    case 'dateTime':
      return 'Enter local date and time as year-month-day and hours:minutes, such as 2031-04-09T14:35.';
    case 'ref':
      return 'Choose one from the list.';
  }
}

const fieldSchema = (field: Field) =>
  z
    .unknown()
    .optional()
    .transform((raw, context): FieldValue => {
      const parsed = parseField(field, raw);
      if (parsed.ok) return parsed.value;
      context.addIssue({ code: 'custom', message: parsed.message });
      return z.NEVER;
    });

/** The zod check of a kind: strings of a form or a file in, typed fields out, every field present. */
export const kindSchema = (kind: Kind) =>
  z.object(Object.fromEntries(kind.fields.map((field) => [field.id, fieldSchema(field)])));

export type ParsedFields =
  | { readonly ok: true; readonly fields: Entity['fields'] }
  | {
      readonly ok: false;
      /** Field id → what to enter instead. */
      readonly errors: Readonly<Record<string, string>>;
      /** What was entered, so that nothing has to be typed again. */
      readonly kept: Readonly<Record<string, unknown>>;
    };

/** Every field of the kind from what was entered, or every refusal at once. Keys that are no field are ignored. */
export function parseFields(kind: Kind, input: Readonly<Record<string, unknown>>): ParsedFields {
  const fields: Record<string, FieldValue> = {};
  const errors: Record<string, string> = {};
  for (const field of kind.fields) {
    const parsed = parseField(field, input[field.id]);
    if (parsed.ok) fields[field.id] = parsed.value;
    else errors[field.id] = parsed.message;
  }
  return Object.keys(errors).length > 0 ? { ok: false, errors, kept: input } : { ok: true, fields };
}
