/**
 * What the models of figures call in a page: Python's own functions, where JavaScript has none alike. The build
 * translates the models (`scripts/latchside/figures/translate.py`); tests hold both to the same answers. Pure.
 */

/** Inputs that contradict each other: words for the reader, and no answer. */
export class Refused extends Error {}

/** The items of an array, or the keys of an object. @param {any} of @returns {any[]} */
export const each = (of) => (Array.isArray(of) ? of : Object.keys(of));
/** @param {any} of */
export const list = (of) => [...each(of)];
/** @param {any} of */
export const len = (of) => each(of).length;
/** @param {any} value */
export const truth = (value) => (Array.isArray(value) ? value.length > 0 : Boolean(value));
/** @param {any} first @param {() => any} then */
export const or = (first, then) => (truth(first) ? first : then());
/** @param {any} first @param {() => any} then */
export const and = (first, then) => (truth(first) ? then() : first);
/** @param {any} of @param {any} key */
export const at = (of, key) => (Array.isArray(of) ? of.at(key) : of[key]);
/** @param {any} of @param {any} wanted */
export const has = (of, wanted) => (Array.isArray(of) ? of.includes(wanted) : Object.hasOwn(of, wanted));
/** @param {object} of */
export const items = (of) => Object.entries(of);
/** @param {object} of */
export const values = (of) => Object.values(of);
/** @param {[any, any][]} pairs */
export const dict = (pairs) => Object.fromEntries(pairs);

/** What is left of a division, with the sign of the divisor. @param {number} a @param {number} b */
export const mod = (a, b) => {
  const left = a % b;
  return left && left < 0 !== b < 0 ? left + b : left;
};
/** @param {number[]} of */
export const sum = (of) => of.reduce((all, one) => all + one, 0);
/** @param {number} first @param {number} [end] */
export const range = (first, end) => {
  const [start, stop] = end === undefined ? [0, first] : [first, end];
  return Array.from({ length: Math.max(0, stop - start) }, (_, step) => start + step);
};
/** @param {any[]} of */
export const enumerate = (of) => of.map((one, place) => [place, one]);
/** @param {...any[]} lists */
export const zip = (...lists) => lists[0].map((_, place) => lists.map((one) => one[place]));
/** @param {any[]} of */
export const pairwise = (of) => of.slice(1).map((one, place) => [of[place], one]);
/** @param {...any[]} lists @returns {any[][]} */
export const product = (...lists) =>
  lists.reduce(
    (/** @type {any[][]} */ all, one) => all.flatMap((before) => one.map((last) => [...before, last])),
    [[]],
  );

/** Every choice of so many, each in the order of the list. @param {any[]} of @param {number} count @returns {any[][]} */
export function combinations(of, count) {
  if (!count) return [[]];
  return of.flatMap((one, place) => combinations(of.slice(place + 1), count - 1).map((rest) => [one, ...rest]));
}

/** Below zero where `a` comes first; lists by their first item that differs. @param {any} a @param {any} b @returns {number} */
function compare(a, b) {
  if (!Array.isArray(a)) return Number(a > b) - Number(a < b);
  const differs = a.findIndex((one, place) => place < b.length && compare(one, b[place]));
  return differs < 0 ? a.length - b.length : compare(a[differs], b[differs]);
}

const same = (/** @type {any} */ one) => one;

/** @param {any} of @param {(one: any) => any} [key] */
export const sorted = (of, key = same) => each(of).toSorted((a, b) => compare(key(a), key(b)));

/** The first of the best. @param {any[]} of @param {(one: any) => any} key @param {any} rest @param {number} sign */
function best(of, key, rest, sign) {
  if (!of.length) return rest;
  const keys = of.map(key);
  return of[keys.reduce((found, one, place) => (sign * compare(one, keys[found]) < 0 ? place : found), 0)];
}
/** @param {any} of @param {(one: any) => any} [key] @param {any} [rest] where there is nothing */
export const min = (of, key = same, rest) => best(each(of), key, rest, 1);
/** @param {any} of @param {(one: any) => any} [key] @param {any} [rest] where there is nothing */
export const max = (of, key = same, rest) => best(each(of), key, rest, -1);

/** @param {number} size @param {number} sign */
export const copysign = (size, sign) => (sign < 0 || Object.is(sign, -0) ? -Math.abs(size) : Math.abs(size));
/** @param {number} value @param {number} digits */
export const round = (value, digits) => Number(value.toFixed(digits));

/** A number with so many digits: `.3g`. @param {number} value @param {string} form */
export const format = (value, form) => String(Number(value.toPrecision(Number(form.slice(1, -1)))));

/** @param {number[]} of @param {number} x */
const polynomial = (of, x) => of.reduceRight((all, one) => all * x + one, 0);
const MIDDLE = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
];
const NEAR = [
  [
    1.4234371107496837, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
];
const FAR = [
  [
    6.657904643501104, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 1.8463183175100548e-5,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
];

/**
 * The standard normal deviate of a share between 0 and 1: Wichura, Algorithm AS 241, Applied Statistics 37 (1988) 477.
 * @param {number} share
 */
export function deviate(share) {
  const off = share - 0.5;
  const ratio = (/** @type {number[][]} */ [over, under], /** @type {number} */ x) =>
    polynomial(over, x) / polynomial(under, x);
  if (Math.abs(off) <= 0.425) return off * ratio(MIDDLE, 0.180625 - off * off);
  const tail = Math.sqrt(-Math.log(off < 0 ? share : 1 - share));
  const size = tail <= 5 ? ratio(NEAR, tail - 1.6) : ratio(FAR, tail - 5);
  return off < 0 ? -size : size;
}
