"use strict";
// A recipe with a reader's own figures. All of them are worked, rounded and compared by stillroomReader; here blanks are
// laid out, what stands in them is handed on, and what comes back is written beside the book's.
globalThis.stillroomSlate = (slate) => {
  const { open, work, batch, turn, read, leadsTo, impossible, shown, plainly, between, other, showUsual, equation, judge,
    because, first, ...reader } = stillroomReader;
  const { fill, say, make, faults } = stillroomSaid;
  const ways = open(JSON.parse(slate.querySelector(".slate-data").textContent));
  const printed = work(ways[0], new Map());
  const PLAIN = { text: "", kind: "", places: 2, printed: 1 };
  // An amount is looked for between a thousandth and a thousand times what it is, as the program does.
  const SPAN = 1000;
  const US = { volume: "fl oz", mass: "oz", temperature: "°F" };

  // What the reader put in, as it stands in an address: each line's under its name.
  let given = new URLSearchParams();
  let way, book, last, rows, taken, told, wait;
  // What stood in each blank when it was last read.
  const texts = new Map();
  const us = () => given.get("measures") === "us";
  const usual = (unit) => (us() && US[unit.kind]) || "";
  const inUnit = ({ unit }) => usual(unit) || unit.text;
  const named = (line) => way.lines[line].name;
  const called = (name) => way.lines.findIndex((line) => line.name === name);
  const result = (line) => (line === way.ids.bottles && way.vessel ? way.vessel[1] : named(line));

  // ---- The blanks.

  const row = (key, name, control, hint = "", unit = "") => {
    const id = `${slate.id}-${rows.size}`;
    const fault = make("p", { class: "slate-fault", id: `${id}-fault` });
    control.id = id;
    control.dataset.key = key;
    control.setAttribute("aria-describedby", `${id}-hint ${id}-unit ${id}-fault`);
    rows.set(key, { control, fault });
    return make("div", { class: "slate-row" }, make("label", { for: id }, name), make("span", { class: "under", id: `${id}-hint` }, hint),
      control, make("span", { class: "slate-unit", id: `${id}-unit` }, unit), fault);
  };
  const input = (key, placeholder) =>
    make("input", { type: "text", autocomplete: "off", value: given.get(key) ?? "", placeholder });
  const choose = (key, options) => {
    const made = make("select", {}, ...options.map(([value, text = value]) => make("option", { value }, text)));
    made.value = given.get(key);
    if (made.selectedIndex < 0) made.selectedIndex = 0;
    return made;
  };
  const blank = (line) => {
    const { name, unit, three } = way.lines[line];
    const [amount, second] = [shown(book, line), other(book, line)];
    const hint = three ? say("book-between", { amount, low: showUsual(three[0], unit), high: showUsual(three[2], unit) })
      : say("book-has", { amount: unit.kind === "temperature" ? second : second ? `${amount}; ${second}` : amount });
    return row(name, name, input(name, usual(unit) ? "" : amount.split("\u00a0")[0]), hint, inUnit(way.lines[line]));
  };
  const group = (legend, inside, folded) => {
    const set = make("fieldset", { "aria-label": legend }, folded ? "" : make("legend", {}, legend), ...inside);
    if (!folded || !inside.length) return inside.length ? set : "";
    const fold = make("details", {}, make("summary", {}, make("span", {}, legend)), set);
    fold.open = [...set.querySelectorAll("[data-key]")].some((control) => given.has(control.dataset.key));
    return fold;
  };
  const lay = () => {
    const focus = document.activeElement.dataset.key;
    [rows, taken] = [new Map(), new Map()];
    way = ways.find(({ name }) => name === given.get("way")) ?? ways[0];
    last = book = work(way, new Map());
    const kinds = (some) => way.lines.flatMap(({ kind }, line) => (some.includes(kind) ? line : []));
    const targets = ["bottles", "finished", "finished-weight", "doses", "pieces", "area"].flatMap((id) => way.ids[id] ?? []);
    const target = targets.find((line) => named(line) === given.get("of")) ?? targets[0];
    form.replaceChildren(
      group(say("made-as"), [
        ways.length > 1 ? row("way", say("way"), choose("way", ways.map(({ name }) => [name]))) : "",
        row("measures", say("measures"), choose("measures", [["metric", say("metric")], ["us", say("us")]]), say("measures-mean")),
      ]),
      group(say("amounts"), kinds("grl").map(blank)),
      // What is declared and measured too has its blank already.
      group(say("measured"), way.measured.filter((line) => way.lines[line].kind === "w").map(blank)),
      group(say("batch"), [
        row("times", say("times-as-much"), input("times", "1"), say("times-means")),
        ...(target === undefined ? [] : [
          row("aim", say("aim-at"), input("aim", ""), say("book-has", { amount: plainly(book, target) }), inUnit(way.lines[target])),
          row("of", say("aim-of"), choose("of", targets.map((line) => [named(line), result(line)]))),
          row("by", say("aim-by"), choose("by", [["", say("whole-batch")],
            ...kinds("gr").filter((line) => leadsTo(way, line, target)).map((line) => [named(line)])])),
        ]),
      ], true),
      group(say("kitchen"), kinds("ak").map(blank), true),
    );
    rows.get(focus)?.control.focus();
  };

  // ---- What stands in them.

  const FAULTS = {
    ...faults, nothing: say("nothing"), reach: say("aim-reach"), several: say("aim-several"), jumped: say("aim-jumped"),
  };
  const tell = (key, text) => {
    const { control, fault } = rows.get(key);
    fault.textContent = text;
    control.setAttribute("aria-invalid", text !== "");
  };
  // What cannot be read changes nothing: what was read there before stands.
  const take = (key, unit) => {
    const { value, fault, of } = read(given.get(key) ?? "", unit, usual(unit));
    tell(key, FAULTS[fault] ? fill(FAULTS[fault], { text: of, unit: unit.text || say("plain-number") }) : "");
    if (fault === "empty") taken.delete(key);
    if (value !== undefined) {
      taken.set(key, value);
      texts.set(key, given.get(key));
    }
    return taken.get(key);
  };
  // Everything as it is set: what is declared, what was measured, how much of it, and what it is to come to.
  const settings = () => {
    const [set, measured] = [new Map(), new Map()];
    way.lines.forEach(({ name, unit, kind }, line) => {
      const value = rows.has(name) ? take(name, unit) : undefined;
      if (value !== undefined) (kind === "w" ? measured : set).set(line, value);
    });
    // Held against what the figures come to without it.
    const before = measured.size ? work(way, set) : null;
    for (const [line, value] of measured) {
      const found = reader.odd(before, line, value);
      if (found) told.push(say("odd", { line: named(line), low: found[0], high: found[1] }));
    }
    const times = take("times", PLAIN);
    const grown = (by, more = []) => new Map([...(by === undefined ? set : batch(way, by, set)), ...more, ...measured]);
    const plain = grown(times);
    const target = called(rows.get("of")?.control.value);
    const wanted = target < 0 ? undefined : take("aim", way.lines[target].unit);
    if (wanted === undefined) return plain;
    const { unit } = way.lines[target];
    const by = rows.get("by").control.value;
    const moved = called(by);
    const ask = (amount) => (by ? grown(times, [[moved, amount]]) : grown(amount));
    // What was measured stays. A number that it came of is past; one that is still to come can be moved.
    const past = (line) => way.lines.some(({ kind }, from) => (by ? from === moved : kind === "g") && leadsTo(way, from, line));
    const settled = [...measured.keys()].find((line) => line === target || (leadsTo(way, line, target) && past(line)));
    if (settled !== undefined) {
      tell("aim", say("aim-settled", { measured: named(settled), line: result(target) }));
      return plain;
    }
    const now = by ? plain.get(moved) ?? way.lines[moved].value : 1;
    const { amount, none, low, high } = turn(way, ask, target, wanted, [now / SPAN, now * SPAN]);
    if (none) {
      tell("aim", fill(FAULTS[Number.isFinite(low) ? "reach" : none === "several" ? none : "jumped"],
        { line: result(target), low: showUsual(low, unit), high: showUsual(high, unit) }));
      return plain;
    }
    told.push(by ? say("aim-line", { line: by, amount: showUsual(amount, way.lines[moved].unit) })
      : say("aim-batch", { times: showUsual(amount, PLAIN) }));
    return ask(amount);
  };

  // ---- What comes of it.

  const unseen = (text) => make("span", { class: "unseen" }, text, " ");
  const pair = ([was, is]) => (was === is ? is
    : make("span", {}, unseen(say("the-book")), make("s", {}, was), " ", unseen(say("yours")), make("b", {}, is)));
  const under = (text) => (text ? make("span", { class: "under" }, text) : "");
  // Both systems, the reader's first; the book's struck in the first that differs.
  const readings = (line, metric, second) => {
    const both = [[metric(book), metric(last)], [second(book), second(last)]];
    if (usual(way.lines[line].unit) && second(last)) both.reverse();
    const [[was, is], next] = both;
    return make("span", { class: "readings" }, pair(both[0]), under(was === is ? pair(next) : next[1]));
  };
  const table = (caption, heads, body) => make("table", { class: "every" }, make("caption", {}, caption),
    make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))), make("tbody", {}, ...body));
  const cells = (name, mark, ...rest) => make("tr", {}, make("th", { scope: "row" }, name, under(mark)), ...rest);
  const differs = (line) => shown(book, line) !== shown(last, line);
  const lineRow = (line) => {
    const { name, kind } = way.lines[line];
    const mine = taken.has(name);
    const sum = mine ? say("as-yours") : kind === "w" ? equation(way.lines[line], (from) => shown(last, from))
      : "al".includes(kind) ? say("as-assumed") : "pk".includes(kind) ? say("as-published") : differs(line) ? say("as-asked") : say("as-said");
    return cells(name, mine ? say("is-yours") : differs(line) ? say("is-changed") : "", make("td", { class: "sum" }, sum),
      make("td", { class: "result" }, readings(line, (of) => shown(of, line), (of) => other(of, line)), under(between(last, line))));
  };
  const lines = (caption, some) => table(caption, [say("line"), say("sum"), say("result")], some.map(lineRow));
  const putIn = ([name, weight, volume, keeps]) => cells(name, "", make("td", { class: "result" },
    ...[[volume, reader.kitchenVolume], [weight, reader.kitchenWeight]].map(([line, kitchen]) =>
      (line === null ? "" : readings(line, (of) => plainly(of, line), (of) => kitchen(of, line, keeps))))));
  const closed = (text) => text.replace(/[^.?!…]$/, "$&.");
  const caution = ({ level, lead, text = "" }, mark) => make("div", { class: `caution ${level}` }, under(mark),
    make("p", {}, level === "stop" ? make("span", { class: "stop-word" }, say("stop"), " ") : "", make("b", {}, closed(lead)), " ", text));
  const keeps = (of) => `${judge(of).class}: ${judge(of).words}; ${judge(of).verdict}`;
  const head = (text) => make("p", { class: "slate-head" }, text);

  const show = () => {
    // What figures decide, against what this page says of the recipe itself.
    const [were, are] = [printed, last].map(reader.cautions);
    const among = (all) => ({ id }) => all.some((one) => one.id === id);
    const without = (those, these) => those.filter((one) => !among(these)(one));
    const [more, less] = [way.more, way.less].map((all) => all.map(([level, lead, text]) => ({ level, lead, text })));
    const ledger = [...new Set([...first.map((id) => last.ids[id]), way.ids.bottles])].filter((line) => line !== undefined);
    const changed = ledger.filter(differs).map(named);
    const fresh = [...without(are, were), ...more];
    results.replaceChildren(
      table(say("put-in"), [say("what"), say("amount")], way["put-in"].map(putIn)),
      lines(say("ledger"), ledger),
      every,
      head(say("keeping")), make("p", {}, pair([keeps(book), keeps(last)]), "."), make("p", {}, `${say("why")} ${because(last, judge(last))}.`),
      head(say("cautions")), ...fresh.map((one) => caution(one, say("is-new"))), ...are.filter(among(were)).map((one) => caution(one)),
      ...[...without(were, are), ...less].map(({ lead }) => make("p", {}, say("is-gone"), " ", make("s", {}, lead))),
      make("p", { class: "slate-closing" }, say("cautions-stand")),
    );
    unfold();
    const { made } = way;
    return [
      ...fresh.filter(({ level }) => level === "stop").map(({ lead }) => `${say("stop")} ${closed(lead)}`),
      made === null ? "" : say("makes", { line: named(made), amount: [plainly(last, made), other(last, made)].filter(Boolean).join("; ") }),
      say("keeps", { class: keeps(last) }),
      changed.length ? say("changed", { count: changed.length, all: ledger.length, lines: changed.slice(0, 3).join("; ") }) : say("unchanged"),
    ];
  };
  let drawn;
  const again = () => {
    clearTimeout(wait);
    const of = work(way, settings());
    const wrong = impossible(way, of.values);
    if (wrong < 0) {
      last = of;
      drawn = show();
    }
    const text = [...told, ...(wrong < 0 ? drawn : [of.values[wrong] < 0 ? say("cannot-be", { line: named(wrong) }) : say("no-sum", { line: named(wrong) })])].join(" ");
    if (status.textContent !== text) status.textContent = text;
    told = [];
    if (!address.hidden) share();
  };

  // ---- To begin with, to hand on, to keep.

  // Everything laid out anew with what is given; what fits nowhere is told and left out.
  const anew = (text, ...notes) => {
    [given, told] = [new URLSearchParams(text), notes];
    lay();
    for (const [key, value] of [...given]) {
      const control = rows.get(key)?.control;
      if (control && control.value === value) continue;
      told.push(say("not-found", { name: control ? value : key }));
      given.delete(key);
    }
    again();
  };
  const store = (does) => { try { return does(localStorage, `stillroom-slate:${location.pathname}#${slate.id}`); } catch { return null; } };
  const mark = `#${slate.id}?`;
  // What is handed on or kept is what is worked with: of an entry that cannot be read the one before it.
  const inUse = () => new URLSearchParams([...given].flatMap(([key, text]) =>
    (rows.get(key)?.control.getAttribute("aria-invalid") === "true" ? (texts.has(key) ? [[key, texts.get(key)]] : []) : [[key, text]])));
  const share = () => {
    link.value = location.href.split("#")[0] + mark + inUse();
    try { history.replaceState(null, "", mark + inUse()); } catch { /* then it stands in the blank alone */ }
  };
  const button = (text, does) => {
    const made = make("button", { type: "button" }, text);
    made.addEventListener("click", does);
    return made;
  };
  const form = make("div");
  const status = make("p", { class: "slate-status", role: "status" });
  const results = make("div");
  const every = make("details", {}, make("summary", {}, make("span", {}, say("every-line"))));
  const unfold = () => {
    every.querySelector("table")?.remove();
    if (every.open) every.append(lines(say("every-line"), [...way.lines.keys()]));
  };
  const link = make("input", { readonly: "", id: `${slate.id}-address` });
  const address = make("div", { class: "slate-row" }, make("label", { for: link.id }, say("address")), link);
  const forget = button(say("forget"), () => {
    store((all, key) => all.removeItem(key));
    forget.hidden = true;
    status.textContent = say("forgotten");
  });
  address.hidden = true;
  slate.append(form, status, results,
    button(say("wipe"), () => {
      address.hidden = true;
      if (location.hash.startsWith(mark)) history.replaceState(null, "", `#${slate.id}`);
      anew(us() ? "measures=us" : "", say("wiped"));
    }),
    button(say("share"), () => { share(); address.hidden = false; link.select(); }),
    button(say("keep"), () => {
      forget.hidden = store((all, key) => { all.setItem(key, inUse()); return true; }) === null;
      status.textContent = forget.hidden ? say("refused") : say("kept");
    }), forget, address);

  const put = ({ dataset: { key }, value }) => { if (value.trim()) given.set(key, value.trim()); else given.delete(key); };
  form.addEventListener("input", ({ target }) => {
    if (target.localName !== "input") return;
    put(target);
    clearTimeout(wait);
    wait = setTimeout(again, 400);
  });
  // A number that stands alone keeps the unit it was meant in when the measures change.
  const withUnits = () => {
    for (const line of way.lines) {
      const text = given.get(line.name);
      if (text && US[line.unit.kind] && /^[\d\s.,/½⅓⅔¼¾⅛⅜⅝⅞]+$/u.test(text)) given.set(line.name, `${text} ${inUnit(line)}`);
    }
  };
  form.addEventListener("change", ({ target }) => {
    if (target.dataset.key === "measures") withUnits();
    put(target);
    if (["way", "measures", "of"].includes(target.dataset.key)) anew(given); else again();
  });
  form.addEventListener("keydown", ({ key, target }) => { if (key === "Enter" && target.localName === "input") again(); });
  every.addEventListener("toggle", unfold);

  // What the address holds, else what was kept, else the book's own.
  return () => {
    const old = store((all, key) => all.getItem(key));
    forget.hidden = old === null;
    if (location.hash.startsWith(mark)) anew(location.hash.slice(mark.length), say("from-address"));
    else if (old !== null) anew(old, say("from-device"));
    else anew(document.documentElement.dataset.measures === "us" ? "measures=us" : "");
  };
};
