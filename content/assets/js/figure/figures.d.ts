/** What `scripts/latchside/pages/calculators.py` writes as `figures.js`: every figure that is expressions, by id. */

/** What was given or worked out for a name. */
export type Value = number | boolean | string | null;

/** The unit of the other system: value in it = factor × value + offset; nothing where there is none. */
export type Others = [sign: string, factor: number, offset: number] | [];

export interface Input {
  name: string;
  label: string;
  unit: string;
  sign: string;
  low: number | null;
  high: number | null;
  default: Value;
  choices: string[];
  integer: boolean;
  many: boolean;
  yesNo: boolean;
  optional: boolean;
  /** The input whose place it takes. */
  insteadOf: string | null;
  /** The words of other inputs under which it is asked for. */
  when: Record<string, string>;
  /** What may be given, in words. */
  accepts: string;
  others: Others;
}

export interface Output {
  name: string;
  label: string;
  unit: string;
  sign: string;
  others: Others;
  /** What is said where it has no value; null where that is a refusal. */
  empty: string | null;
}

/** The names of a figure while it is worked out. */
export type Names = Record<string, Value | Value[]>;

export interface Limit {
  holds(names: Names): boolean;
  words: string;
  refuses: boolean;
  /** The inputs without which it says nothing. */
  needs: string[];
  /** Whether it is about outputs. */
  late: boolean;
}

export interface Figure {
  constants: Record<string, number>;
  example: Record<string, string>;
  inputs: Input[];
  outputs: Output[];
  limits: Limit[];
  lets(names: Names): void;
  work(names: Names): void;
}

export const FIGURES: Record<string, Figure>;
