  // ---- A recipe worked with what a reader set (variation.rs).

  const work = (way, set) => {
    const values = evaluate(way, set);
    const { low, high } = range(way, set);
    // Outside what the equations of water activity were measured on there is no figure for it.
    const known = book.activityKnown.every(([id, most]) => !(id in way.ids) || high[way.ids[id]] <= most);
    const ids = { ...way.ids };
    if (!known) delete ids["water-activity"];
    return { way, set, ids, values, low, high, places: places(way, values, set) };
  };
  const shown = (of, at) => show(of.values[at], of.way.lines[at].unit, of.places[at]);
  const plainly = (of, at) => showUsual(of.values[at], of.way.lines[at].unit);
  const ends = (of, at) => {
    const { unit } = of.way.lines[at];
    const [low, high] = [of.low[at], of.high[at]];
    const after = Math.min(of.places[at], usualPlaces(high, unit));
    const texts = [low, high].map((value) => show(value, unit, after));
    const wide = Math.abs(high - low) > 1e-9 * greater(Math.abs(high), Math.abs(low));
    return wide && texts[0] !== texts[1] ? texts : null;
  };
  const between = (of, at) => {
    const found = ends(of, at);
    return found ? `${found[0].split(NBSP)[0]}\u2060–\u2060${found[1]}` : "";
  };

  // Whether a measured value lies outside what the recipe comes to, however its guesses fall: a slip, as like as not.
  const odd = (of, at, value) => (ends(of, at) && (value < of.low[at] || value > of.high[at]) ? ends(of, at) : null);

  // ---- The other system under a line, and what a kitchen measures (page/show.rs).

  const idOf = (of, at) => Object.keys(of.ids).find((id) => of.ids[id] === at);
  const whole = (count) => Math.floor(count + 1e-9);
  const towards = (of, at) => book.rounds[idOf(of, at)] ?? "near";
  const other = (of, at) => {
    const [value, { unit }] = [of.values[at], of.way.lines[at]];
    const toward = towards(of, at);
    if (unit.kind === "volume" && idOf(of, at) === "sweetener") return volumeUs(value, 0.02, toward) || flOz(value);
    if (unit.kind === "volume" && value >= 1) return flOz(value);
    if (unit.kind === "mass" && value >= 14) return massUs(value, 0.05, toward);
    if (unit.kind === "time" && value >= 60 && unit.printed === 1) return minutes(value);
    if (unit.kind === "temperature") return temperatureText(value);
    if (unit.text === "% w/w") return "by weight";
    return toward === "down" ? `so ${decimal(whole(value), 0)}` : "";
  };
  // A volume as a kitchen with US measures takes it; what must not run short is rounded closely, and up.
  const kitchenVolume = (of, at, keeps) => {
    const toward = keeps ? "up" : towards(of, at);
    return volumeUs(of.values[at], toward === "near" ? 0.05 : 0.02, toward) || flOz(of.values[at]);
  };
  const kitchenWeight = (of, at, keeps) =>
    massUs(of.values[at], keeps ? 0.02 : 0.05, keeps ? "up" : "near") || oz(of.values[at]);

  // ---- Will it keep: the ladder's rows from what binds first (keeping/mod.rs, keeping/ladder.rs).

  const judge = (of, careful = true) => {
    const holds = ([test, id, limit]) => {
      const at = of.ids[id];
      if (test === "acid") return of.way.ph !== null && of.way.ph <= limit;
      if (test === "has-not") return at === undefined;
      if (at === undefined) return false;
      if (test === "least") return (careful ? of.low : of.values)[at] >= limit - 1e-9;
      if (test === "most") return (careful ? of.high : of.values)[at] <= limit + 1e-9;
      return true;
    };
    return book.ladder.find((rung) => rung.all.every(holds)) ?? book.ladder.at(-1);
  };
  const because = (of, rung) => {
    const told = rung.all.flatMap(([test, id, , limit]) => {
      const at = of.ids[id];
      if (at === undefined || !["least", "most", "has"].includes(test)) return [];
      const line = `${of.way.lines[at].name} ${shown(of, at)}`;
      return [test === "has" ? line : `${line} (the limit is ${limit})`];
    });
    return told.length ? `${rung.because}: ${told.join("; ")}` : rung.because;
  };

  // ---- Cautions that hang on a figure (caution/watch.rs).

  const holds = (of, [when, a, b]) => {
    if (when === "at-least") return of.values[a] >= b;
    if (when === "more") return of.values[a] > b;
    if (when === "under") return a.reduce((sum, at) => sum + of.low[at], 0) < b;
    if (when === "over") return of.high[a] > b;
    if (when === "passes") return of.high[a] > of.values[b] * (1 + 1e-9);
    if (when === "unkept") return judge(of).verdict !== "keeps";
    return true;
  };
  const piece = (of, [what, a, b]) => {
    const unit = of.way.lines[a]?.unit;
    if (what === "shown") return shown(of, a);
    if (what === "plain") return plainly(of, a);
    if (what === "times") return showUsual(of.values[a] * of.values[b], unit);
    if (what === "high") return showUsual(of.high[a], unit);
    if (what === "careful-end") return ends(of, a) ? `, ${ends(of, a)[1]} at the careful end` : "";
    if (what === "lasts") {
      return of.values[a] * 1440 > b ? `; what is made here would last ${decimal(Math.floor(of.values[a]), 0)} days` : "";
    }
    return a;
  };
  const cautions = (of) => of.way.watched.filter(([, , when]) => holds(of, when)).map(([rule, id, , says]) => {
    const told = says.map((part) => piece(of, part)).join("");
    const [level, lead, text] = book.cautions[rule];
    return { id, level, lead: lead.replaceAll("{}", told), text: text.replaceAll("{}", told) };
  }).filter((caution, n, all) => all.findIndex((other) => other.id === caution.id) === n);
