  // ---- The lines of a working, evaluated (working/pass.rs).

  // A recipe as its page carries it: lines as [name, unit, kind, ...], with kind g (declared, grows with the batch),
  // r (declared), l (a range the recipe declares), a (assumed), k (of this kitchen), p (published), w (worked).
  // A variation's line that is the recipe's own is told by its place there; what it is worked from goes by name.
  const open = (data) => {
    const line = ([name, unit, kind, ...how]) => {
      const found = { name, unit: data.units[unit], kind };
      if (kind === "w") {
        const [formula, bound] = how;
        const symbols = bound.map((lines) => (Array.isArray(lines) ? lines : [lines]));
        return { ...found, formula, bound: symbols, many: book.many[formula], work: formulas[formula] };
      }
      return kind === "l" || kind === "a" ? { ...found, three: how } : { ...found, value: how[0] };
    };
    const own = data.ways[0].lines.map(line);
    return data.ways.map((way) => ({
      ...way,
      lines: way.lines.map((row) => {
        if (typeof row !== "number") return line(row);
        const here = (at) => way.lines.findIndex((other) => (own[other]?.name ?? other[0]) === own[at].name);
        return own[row].bound ? { ...own[row], bound: own[row].bound.map((lines) => lines.map(here)) } : own[row];
      }),
    }));
  };
  // The value of a worked line from the values of the lines it is bound to.
  const worked = (line, values) => line.work(...line.bound.map((lines, symbol) =>
    line.many.includes(symbol) ? lines.map((at) => values[at]) : values[lines[0]]));
  const evaluate = (way, set) => {
    const values = [];
    way.lines.forEach((line, at) => {
      values.push(set.has(at) ? set.get(at)
        : line.kind === "w" ? worked(line, values) : line.three ? line.three[1] : line.value);
    });
    return values;
  };
  // Low, usual and high of every open assumption crossed; beyond six of them the ends and the usual.
  const range = (way, set) => {
    const values = evaluate(way, set);
    const low = [...values];
    const high = [...values];
    const open = way.lines.flatMap((line, at) => (line.three && !set.has(at) ? [at] : []));
    const ends = open.length <= 6 ? [0, 1, 2] : [0, 2];
    const ways = ends.length ** Math.min(open.length, 12);
    for (let n = 0; n < ways; n += 1) {
      const falls = new Map(set);
      let rest = n;
      for (const at of open) {
        falls.set(at, way.lines[at].three[ends[rest % ends.length]]);
        rest = Math.floor(rest / ends.length);
      }
      evaluate(way, falls).forEach((value, at) => {
        if (!Number.isFinite(value)) return;
        if (value < low[at]) low[at] = value;
        if (value > high[at]) high[at] = value;
      });
    }
    way.lines.forEach((line, at) => {
      const off = line.kind === "w" ? book.accuracy[line.formula] : undefined;
      if (off === undefined) return;
      low[at] -= off;
      high[at] += off;
    });
    return { low, high };
  };
  // The first worked line that comes to less than nothing or to no number; -1 where all can be.
  const impossible = (way, values) => way.lines.findIndex((line, at) =>
    line.kind === "w" && !(values[at] >= -1e-9 && Number.isFinite(values[at])));
  // Every amount that grows with the batch, times `by`; what is set stays set.
  const batch = (way, by, set) => new Map([...set, ...way.lines.flatMap((line, at) =>
    (line.kind === "g" ? [[at, (set.get(at) ?? line.value) * by]] : []))]);
  const leadsTo = (way, from, to) => from === to
    || (way.lines[to].bound ?? []).flat().some((at) => leadsTo(way, from, at));

  // ---- So many decimals that whoever works a line again from the printed figures gets the printed result
  // (working/places.rs).

  const MOST = 8;
  const places = (way, values, set) => {
    const inFull = (value, usual) => {
      for (let n = 0; n <= 5; n += 1) {
        if (Math.abs(rounded(value, n) - value) <= 1e-9 * Math.abs(value)) return n;
      }
      return Math.abs(value) >= 100 ? 0 : usual;
    };
    const found = way.lines.map(({ kind, unit }, at) => ((kind === "w" && !set.has(at)) || unit.kind === "money"
      ? usualPlaces(values[at], unit) : inFull(values[at] * unit.printed, unit.places)));
    const shown = (at, value) => {
      const { printed } = way.lines[at].unit;
      return rounded(value * printed, found[at]) / printed;
    };
    const inputs = (line) => line.bound.flat();
    const again = (line, only) => {
      const printed = [...values];
      for (const at of inputs(line)) {
        if (only === undefined || only === at) printed[at] = shown(at, values[at]);
      }
      return worked(line, printed);
    };
    const recomputes = (at) => shown(at, again(way.lines[at])) === shown(at, values[at]);
    const brink = (at) => {
      let size = Math.abs(values[at] * way.lines[at].unit.printed);
      for (let n = 0; n < found[at]; n += 1) size *= 10;
      return Math.abs(size - Math.floor(size) - 0.5) < 1e-2;
    };
    const worst = (at) => {
      const line = way.lines[at];
      let most = null;
      for (const input of inputs(line)) {
        if (found[input] >= MOST) continue;
        const miss = Math.abs(again(line, input) - values[at]);
        if (miss > 1e-12 * Math.abs(values[at]) && (most === null || miss > most[0])) most = [miss, input];
      }
      return most === null ? null : most[1];
    };
    for (;;) {
      const before = found.join();
      for (let at = way.lines.length - 1; at >= 0; at -= 1) {
        if (set.has(at) || way.lines[at].kind !== "w") continue;
        while (!recomputes(at)) {
          const onTheBrink = brink(at) && found[at] < MOST;
          const more = (onTheBrink ? null : worst(at)) ?? at;
          if (found[more] >= MOST) break;
          found[more] += 1;
        }
      }
      if (found.join() === before) return found;
    }
  };

  // ---- Turned round (working/turned.rs): the amount within both ends for which a line comes to a target.

  const turn = (way, ask, line, target, [least, most]) => {
    const result = (amount) => {
      const values = evaluate(way, ask(amount));
      return impossible(way, values) < 0 ? values[line] : undefined;
    };
    const looks = [];
    for (let look = 0; look < 33; look += 1) {
      const amount = least * pow(most / least, look / 32);
      const found = result(amount);
      if (found !== undefined) looks.push([amount, found]);
    }
    const answers = [];
    let jumped;
    for (let n = 0; n + 1 < looks.length; n += 1) {
      let [[low, atLow], [high, atHigh]] = [looks[n], looks[n + 1]];
      if (atLow < target === atHigh < target) {
        if (atLow === target && !answers.includes(low)) answers.push(low);
        continue;
      }
      for (let halving = 0; halving < 60; halving += 1) {
        const middle = (low + high) / 2;
        const found = result(middle);
        if (found !== undefined && (found < target) === (atLow < target)) low = middle; else high = middle;
      }
      const found = result(high);
      const met = found !== undefined && Math.abs(found - target) <= 1e-9 * greater(Math.abs(target), 1e-9);
      if (met) answers.push(high); else jumped = high;
    }
    if (answers.length === 1) return { amount: answers[0] };
    if (answers.length) return { none: "several" };
    if (jumped !== undefined) return { none: "jumped" };
    const reached = looks.map(([, found]) => found);
    return { none: "reach", low: Math.min(...reached), high: Math.max(...reached) };
  };
