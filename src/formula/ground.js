"use strict";
// The formulas of this book as functions, written by the press from the catalogue that its numbers were worked with.
// What stands here gives the same bits in every browser: only + - * /, comparison, halving and doubling are used.
(() => {
  const formulas = {};
  const relations = {};

  // e to the power, and the natural logarithm. ln 2 stands in two parts, the first of few digits.
  const LN2_HIGH = 0.693145751953125;
  const LN2_LOW = 1.4286068203094173e-6;
  const exp = (x) => {
    if (Number.isNaN(x)) return x;
    if (x > 709) return Infinity;
    if (x < -709) return 0;
    const k = Math.floor(x / (LN2_HIGH + LN2_LOW) + 0.5);
    const r = x - k * LN2_HIGH - k * LN2_LOW;
    let sum = 1;
    for (let n = 17; n >= 1; n -= 1) sum = 1 + r * sum / n;
    let power = 1;
    for (let n = Math.abs(k); n > 0; n -= 1) power *= k < 0 ? 0.5 : 2;
    return sum * power;
  };
  const ln = (x) => {
    if (Number.isNaN(x) || x <= 0) return NaN;
    if (x === Infinity) return x;
    let m = x;
    let k = 0;
    while (m > Math.SQRT2) { m *= 0.5; k += 1; }
    while (m < Math.SQRT1_2) { m *= 2; k -= 1; }
    const s = (m - 1) / (m + 1);
    const square = s * s;
    let sum = 0;
    for (let n = 23; n >= 1; n -= 2) sum = 1 / n + square * sum;
    return k * LN2_HIGH + (k * LN2_LOW + 2 * s * sum);
  };
  const pow = (base, exponent) => {
    if (exponent === 0) return 1;
    if (base === 0 && exponent > 0) return 0;
    if (exponent > 0 && exponent <= 16 && exponent === Math.floor(exponent)) {
      let result = base;
      for (let n = 1; n < exponent; n += 1) result *= base;
      return result;
    }
    return exp(exponent * ln(base));
  };
  // A count this far from a whole one is a whole one.
  const PARTED = 1e-9;
  const lesser = (a, b) => (a < b ? a : b);
  const greater = (a, b) => (a > b ? a : b);

  // Sums and products over lists of lines. A list of one stands for it beside every line of a longer one; an empty
  // list leaves nothing to add.
  const one = (list, i) => (list.length === 1 ? list[0] : list[i]);
  const times = (lists) => {
    const lengths = lists.map((list) => list.length);
    return lengths.includes(0) ? 0 : Math.max(...lengths);
  };
  const fold = (lists, each, start, join) => {
    let all = start;
    for (let i = 0; i < times(lists); i += 1) all = join(all, each(i));
    return all;
  };
  const sum = (lists, each) => fold(lists, each, 0, (a, b) => a + b);
  const product = (lists, each) => fold(lists, each, 1, (a, b) => a * b);

  // A published table by straight lines between its points, or a series; not a number outside its domain.
  const look = (name, x) => {
    const { within: [low, high], table, series, product: factor, over, inverse } = relations[name];
    if (Number.isNaN(x) || x < low || x > high) return NaN;
    if (series) return series.reduceRight((so, coefficient) => so * x + coefficient, 0);
    if (factor) return x * look(factor, x) / over;
    if (inverse) {
      let [from, to] = relations[inverse].within;
      for (let n = 0; n < 60; n += 1) {
        const middle = (from + to) / 2;
        if (look(inverse, middle) < x) from = middle; else to = middle;
      }
      return (from + to) / 2;
    }
    const found = table.findIndex(([at]) => at >= x);
    const after = Math.max(found, 1);
    const [[x0, y0], [x1, y1]] = [table[after - 1], table[after]];
    return y0 + (y1 - y0) * ((x - x0) / (x1 - x0));
  };
