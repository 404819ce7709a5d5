/**
 * One entry per kind of record: its fields drive the form, the zod check, the CSV columns,
 * the table in the report and (checked by a test) the database columns.
 */
type FieldShared = {
  readonly id: string;
  readonly label: string;
  readonly required?: boolean;
  readonly help?: string;
};
export type Field =
  | (FieldShared & { readonly type: 'text'; readonly long?: boolean; readonly maxLength?: number })
  | (FieldShared & { readonly type: 'integer'; readonly min: number; readonly max: number })
  | (FieldShared & { readonly type: 'flag' })
  | (FieldShared & { readonly type: 'date' })
  | (FieldShared & { readonly type: 'dateTime' })
  | (FieldShared & {
      readonly type: 'choice';
      readonly choices: readonly {
        readonly id: string;
        readonly label: string;
        /** Other writings of it in files, in lower case. */
        readonly alsoSaid?: readonly string[];
      }[];
    })
  /** Refers to another record of the same case. */
  | (FieldShared & { readonly type: 'ref'; readonly to: string });

export type Kind = {
  readonly id: string;
  /** Singular and plural as the trade says them. */
  readonly name: string;
  readonly plural: string;
  readonly fields: readonly Field[];
  /** How one record is called in a list or a sentence: "AXLE 2 of 14, XYZ 1234". Given the fields. */
  readonly describe: (fields: Readonly<Record<string, string | number | boolean | null>>) => string;
};
