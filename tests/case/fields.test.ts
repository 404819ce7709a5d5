import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindSchema, parseField, parseFields } from '~/lib/case/fields';
import type { Field } from '~/lib/case/kind';
import { caseKind, KINDS } from '~/lib/case/kinds';

const text: Field = { id: 't', label: 'Note', type: 'text', maxLength: 10 };
const long: Field = { id: 'l', label: 'Story', type: 'text', long: true };
const whole: Field = { id: 'i', label: 'Axle', type: 'integer', min: 1, max: 16, required: true };
const flag: Field = { id: 'f', label: 'Derailed', type: 'flag' };
const date: Field = { id: 'd', label: 'Calibrated', type: 'date' };
const dateTime: Field = { id: 'dt', label: 'When', type: 'dateTime' };
const choice: Field = {
  id: 'c',
  label: 'Rail',
  type: 'choice',
  choices: [
    { id: 'left', label: 'Left rail' },
    { id: 'right', label: 'Right rail' },
  ],
};
const value = (field: Field, raw: unknown) => {
  const parsed = parseField(field, raw);
  return parsed.ok ? parsed.value : `refused: ${parsed.message}`;
};

describe('one field', () => {
  it('takes an empty or missing cell as not said', () => {
    for (const field of [text, flag, date, dateTime, choice])
      for (const raw of ['', '  ', undefined, null]) expect(value(field, raw)).toBeNull();
  });

  it('says what to enter in a required field', () => {
    expect(value(whole, ' ')).toBe('refused: Axle is needed. Enter a whole number from 1 to 16.');
  });

  it.each([
    ['1', 1],
    [' 16 ', 16],
    ['12.0', 12],
    [7, 7],
  ])('takes %j as the whole number %d', (raw, expected) => expect(value(whole, raw)).toBe(expected));

  it.each(['0', '17', '-3', '1.5', '1/2', 'two', 'NaN', '1e1', '9999999999999999999', Infinity])(
    'refuses %j as an axle',
    (raw) => expect(value(whole, raw)).toBe('refused: Enter a whole number from 1 to 16.'),
  );

  it.each([
    ['on', true],
    ['Yes', true],
    ['TRUE', true],
    ['1', true],
    [true, true],
    ['no', false],
    ['0', false],
    [false, false],
  ])('takes %j as the flag %j', (raw, expected) => expect(value(flag, raw)).toBe(expected));

  it('refuses a flag that is neither', () => expect(value(flag, 'maybe')).toBe('refused: Enter yes or no.'));

  it('takes a choice by id or label in any case', () => {
    for (const raw of ['left', 'LEFT', 'left RAIL']) expect(value(choice, raw)).toBe('left');
    expect(value(choice, 'centre')).toBe('refused: Enter one of: Left rail; Right rail.');
  });

  it('takes only days that exist', () => {
    expect(value(date, '2032-02-29')).toBe('2032-02-29');
    for (const raw of ['2031-02-29', '2031-13-01', '2031-00-10', '04/09/2031', '2031-4-9', '0031-04-09'])
      expect(value(date, raw)).toContain('such as 2031-04-09');
  });

  it('takes local date and time, with a space or seconds', () => {
    expect(value(dateTime, '2031-04-09T14:35')).toBe('2031-04-09T14:35');
    expect(value(dateTime, '2031-04-09 14:35:00')).toBe('2031-04-09T14:35');
    expect(value(dateTime, '2031-04-09T14:35:07')).toBe('2031-04-09T14:35:07');
    for (const raw of ['2031-04-09T24:00', '2031-04-09T14:60', '2031-04-09T14:35Z', '2031-04-09', '14:35'])
      expect(value(dateTime, raw)).toContain('such as 2031-04-09T14:35');
  });

  it('keeps line ends only where long text is asked for', () => {
    expect(value(long, 'a\r\nb')).toBe('a\nb');
    expect(value(text, 'a \r\n b')).toBe('a b');
  });

  it('says how much too long a text is', () =>
    expect(value(text, 'x'.repeat(12))).toBe('refused: Note has 12 characters. Shorten it to 10 or fewer.'));

  it('refuses several values where one is asked for', () => {
    expect(value(text, ['a', 'b'])).toBe('refused: Enter one value for “Note”.');
    expect(value(choice, { left: true })).toContain('Enter one value');
  });

  it('drops what could not be stored unchanged', () => expect(value(text, 'a\ud800b\u0000c')).toBe('abc'));
});

describe('all fields of a kind', () => {
  it('gives every field, and ignores keys that are none', () => {
    const parsed = parseFields(KINDS.station, {
      name: ' -15.5 ',
      disturbance: 'Undisturbed',
      intent: 'save',
    });
    expect(parsed).toEqual({
      ok: true,
      fields: { name: '-15.5', disturbance: 'undisturbed', joint: null, note: null },
    });
  });

  it('gives every refusal at once and keeps what was entered', () => {
    const input = { position: '999', mark: 'ABCX', type: 'spaceship' };
    const parsed = parseFields(KINDS.vehicle, input);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(Object.keys(parsed.errors)).toEqual(['position', 'number', 'type']);
    expect(parsed.kept).toBe(input);
  });

  it('agrees with the zod check of the kind, whatever is entered', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom(undefined, null, '', 'on', 'left', '3', '2031-04-09', 'Undisturbed', 'Locomotive'),
      fc.integer(),
      fc.array(fc.string(), { maxLength: 2 }),
    );
    for (const kind of [caseKind, ...Object.values(KINDS)]) {
      const schema = kindSchema(kind);
      const inputs = fc.dictionary(fc.constantFrom(...kind.fields.map((field) => field.id)), cell);
      fc.assert(
        fc.property(inputs, (input) => {
          const parsed = parseFields(kind, input);
          const checked = schema.safeParse(input);
          expect(checked.success).toBe(parsed.ok);
          if (parsed.ok) expect(checked.data).toEqual(parsed.fields);
          else
            expect(
              Object.fromEntries((checked.error?.issues ?? []).map((i) => [String(i.path[0]), i.message])),
            ).toEqual(parsed.errors);
        }),
        { seed: 7, numRuns: 60 },
      );
    }
  });

  it('takes back its own fields unchanged', () => {
    const first = parseFields(KINDS.vehicle, {
      position: '4',
      mark: 'ABCX',
      number: '1234',
      type: 'Covered hopper',
      derailed: 'on',
      hazmat: 'no',
    });
    expect(first.ok && parseFields(KINDS.vehicle, first.fields)).toEqual(first);
  });
});
