/** What `scripts/latchside/pages/figure_script.py` writes as `figures.js`: every figure that a page works out, by id. */

/** What was given or worked out for a name; lists and rows from models alone. */
export type Value = number | boolean | string | null | Value[] | { [name: string]: Value };

/** The unit of the other system: value in it = factor × value + offset; nothing where there is none. */
export type Others = [sign: string, factor: number, offset: number] | [];

export interface Input {
  name: string;
  label: string;
  help: string;
  unit: string;
  sign: string;
  low: number | null;
  high: number | null;
  default: Value;
  choices: [word: string, shown: string][];
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
  /** The same in the other system of units. */
  acceptsOther: string;
  others: Others;
  /** Whether it is asked for on tap. */
  more: boolean;
}

export interface Output {
  name: string;
  label: string;
  sign: string;
  others: Others;
  /** What is said where it has no value; null where that is a refusal. */
  empty: string | null;
  /** Whether it is what people came for. */
  main: boolean;
  /** What a reader sees for a word, as a value or as the name of a row. */
  words: Record<string, string>;
  /** The columns of what is rows of figures. */
  columns: Output[];
}

/** The names of a figure while it is worked out. */
export type Names = Record<string, Value>;

export interface Limit {
  holds(names: Names): boolean;
  words: string;
  refuses: boolean;
  /** The inputs without which it says nothing. */
  needs: string[];
  /** Whether it is about outputs. */
  late: boolean;
}

export interface Judgement {
  holds(names: Names): boolean;
  words: string;
}

export interface Figure {
  constants: Record<string, number>;
  /** The worked examples, as typed; the first is the page's own. */
  examples: Record<string, string>[];
  inputs: Input[];
  outputs: Output[];
  limits: Limit[];
  judgements: Judgement[];
  lets(names: Names): void;
  work(names: Names): void;
  /** Works out what is more than expressions. It may give `warnings`, and throws `Refused`. */
  model: ((given: Names) => Names) | null;
}

export const FIGURES: Record<string, Figure>;
