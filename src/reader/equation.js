  // ---- A line's sum as one line of text (formula/equation.rs): names, or the figures put in.

  const SUM = 0;
  const PRODUCT = 1;
  const WHOLE = 2;
  const within = ([text, binds], needs) => (binds >= needs ? text : `(${text})`);
  const join = (op, left, right) => {
    if (op === "/") return [`${within(left, PRODUCT)} ÷ ${within(right, WHOLE)}`, PRODUCT];
    if (op === "^") return [`${within(left, WHOLE)}^${within(right, WHOLE)}`, WHOLE];
    if (op === "min") return [`the lesser of ${left[0]} and ${right[0]}`, SUM];
    if (op === "max") return [`the greater of ${left[0]} and ${right[0]}`, SUM];
    const binds = op === "*" ? PRODUCT : SUM;
    const sign = { "+": "+", "-": "−", "*": "×" }[op];
    return [`${within(left, binds)} ${sign} ${within(right, op === "-" ? PRODUCT : binds)}`, binds];
  };
  // A tree is a number as printed, a symbol as its place, or [op, ...].
  const equation = (line, atom) => {
    const symbols = (tree) => (typeof tree === "number" ? [tree] : Array.isArray(tree) ? tree.slice(1).flatMap(symbols) : []);
    const count = (tree) => {
      const lengths = symbols(tree).map((symbol) => line.bound[symbol].length);
      return lengths.includes(0) ? 0 : Math.max(0, ...lengths);
    };
    const each = (tree) => Array.from({ length: count(tree) }, (_, n) => piece(tree, n));
    const piece = (tree, n) => {
      if (typeof tree === "string") return [tree, WHOLE];
      if (typeof tree === "number") {
        const lines = line.bound[tree];
        return [atom(lines.length === 1 ? lines[0] : lines[n]), WHOLE];
      }
      const [op, a, b, then, otherwise] = tree;
      if (op === "sum" || op === "product") {
        const [first, ...rest] = each(a);
        if (!first) return [op === "sum" ? "0" : "1", WHOLE];
        return rest.reduce((left, right) => join(op === "sum" ? "+" : "*", left, right), first);
      }
      if (op === "exp") return [`e^(${piece(a, n)[0]})`, WHOLE];
      if (op === "up" || op === "down") return [`(${piece(a, n)[0]}), whole, rounded ${op}`, WHOLE];
      if (op === "ln") return [`ln(${piece(a, n)[0]})`, WHOLE];
      if (op === "look") return [`(${a}, read at ${piece(b, n)[0]})`, WHOLE];
      if (op === "if") {
        return [`${piece(then, n)[0]} if ${piece(a, n)[0]} is less than ${piece(b, n)[0]}, else ${piece(otherwise, n)[0]}`, SUM];
      }
      if (op === "-" && b[0] === "sum") return each(b[1]).reduce((left, right) => join("-", left, right), piece(a, n));
      return join(op, piece(a, n), piece(b, n));
    };
    return piece(book.trees[line.formula], 0)[0];
  };
