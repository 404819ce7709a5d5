/** One number of engineering judgement, addressable, so that it can be shown and changed with a reason. */
export type Judgement = {
  /** `expectation/<explanation>/<fact>`, `witness/<witness>/<outcome>/ifTrue|ifFalse`, `rule/<name>`. */
  readonly path: string;
  readonly value: number;
  readonly reason: string;
  /** What the number is, in words. */
  readonly what: string;
  readonly group: 'expectation' | 'witness' | 'rule';
};

/** A change to the tables, as it was applied. */
export type AppliedChange = {
  readonly path: string;
  readonly what: string;
  readonly from: number;
  readonly to: number;
  readonly reason: string;
  readonly personId: string | null;
  readonly at: string;
};

/** A change on record that could not be applied, with what to enter instead. */
export type RefusedChange = { readonly path: string; readonly value: number; readonly message: string };

/** Every judgement by its path. The only form in which the weighing takes them. */
export type JudgementValues = ReadonlyMap<string, number>;
