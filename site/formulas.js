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

  // Published tables and series, each read inside its domain only.
  relations["honey-gravity"] = { within: [0.13, 0.21], table: [[0.13, 1.4457], [0.14, 1.4404], [0.15, 1.435], [0.16, 1.4295], [0.17, 1.4237], [0.18, 1.4171], [0.19, 1.4101], [0.2, 1.4027], [0.21, 1.395]] };
  relations["spirit-by-volume"] = { within: [0.0, 1.0], product: "spirit-density", over: 0.78924 };
  relations["spirit-density"] = { within: [0.0, 1.0], series: [0.99820123, -0.1929769495, 0.3891238958, -1.668103923, 13.52215441, -88.29278388, 306.2874042, -613.8381234, 747.0172998, -547.8461354, 223.4460334, -39.03285426] };
  relations["spirit-share"] = { within: [0.0, 1.0], inverse: "spirit-by-volume" };

  // The formulas.

  // weight in all; plain addition; always.
  formulas["add-weights"] = (each) =>
    sum([each], (i) => one(each, i));

  // volume in all; honey, syrups and watery liquids add to within about 1 %; watery liquids, honey and syrups; spirits shrink by 1 to 4 %.
  formulas["add-volumes"] = (each) =>
    sum([each], (i) => one(each, i));

  // time in all; plain addition; steps that follow one another.
  formulas["add-times"] = (each) =>
    sum([each], (i) => one(each, i));

  // weight of a part; plain proportion; parts by weight.
  formulas["part-of"] = (whole, part, parts) =>
    whole * part / sum([parts], (i) => one(parts, i));

  // liquid; the ratio 1:n, weight in volume; a ratio in grams and millilitres.
  formulas["for-each-gram"] = (eachGramTakes, plants) =>
    eachGramTakes * plants;

  // liquid by weight; the ratio 1:n, weight in weight; a ratio of weights.
  formulas["for-each-gram-by-weight"] = (eachGramTakes, plants) =>
    eachGramTakes * plants;

  // boiled off; How to properly add water when using a Chinese decocting machine, water to add counts the evaporation by the minute; a steady simmer in one pot; it does not grow with the batch.
  formulas["boil-off"] = (rate, time) =>
    rate * time;

  // minutes at a simmer; How to properly add water when using a Chinese decocting machine, the same sum turned round; a steady open simmer in one pot.
  formulas["time-to-lose"] = (away, rate) =>
    away / rate;

  // kept by a plant; How to properly add water when using a Chinese decocting machine, water to add counts the absorption by weight, 1.5 to 2.0 mL a gram; dried plants, soaked through.
  formulas["hold"] = (eachGramKeeps, plant) =>
    eachGramKeeps * plant;

  // held back; Fresh Plant Tincture: outlines of over 500 major botanical medicines, yield by hand and by press; one way of straining for the whole pan.
  formulas["hold-back"] = (howWet, kept) =>
    howWet * sum([kept], (i) => one(kept, i));

  // what is left; a balance: what is taken away is missing; what goes off is water.
  formulas["lose"] = (before, losses) =>
    before - sum([losses], (i) => one(losses, i));

  // weight left; a balance: what is taken away is missing; what goes off is water.
  formulas["lose-weight"] = (before, losses) =>
    before - sum([losses], (i) => one(losses, i));

  // to boil away; a balance: what is taken away is missing; what goes off is water.
  formulas["away"] = (before, after) =>
    before - after;

  // share of a volume; plain proportion; always.
  formulas["share-of-volume"] = (share, whole) =>
    share * whole;

  // share of a weight; plain proportion; always.
  formulas["share-of-weight"] = (share, whole) =>
    share * whole;

  // share passed on; plain proportion; the liquid is the same throughout, so its share is the share of what it holds.
  formulas["passed"] = (after, before) =>
    after / before;

  // weight; the definition of density; at 20 °C.
  formulas["weigh"] = (volume, density) =>
    volume * density;

  // volume; the definition of density; at 20 °C.
  formulas["measure-out"] = (weight, density) =>
    weight / density;

  // weight at that stage; a balance: what is taken away is missing; what boils away is water.
  formulas["boiled-down"] = (solids, water) =>
    sum([solids], (i) => one(solids, i)) / (1.0 - water);

  // pieces; plain proportion; pieces of one weight.
  formulas["pieces"] = (finished, piece) =>
    finished / piece;

  // covers; a volume is an area times a thickness; laid on evenly.
  formulas["covers"] = (volume, thickness) =>
    volume * 1e-6 / thickness;

  // water in the plant; the definition of moisture; fresh plants; a dried plant's own few per cent are left out in watery liquids.
  formulas["plant-water"] = (plant, moisture) =>
    plant * moisture;

  // as dried; the same dry matter, fresh and dried; always.
  formulas["as-dried"] = (fresh, freshMoisture, driedMoisture) =>
    fresh * (1.0 - freshMoisture) / (1.0 - driedMoisture);

  // weight; the weight of a piece, from the plant's page; pieces as large as the page's.
  formulas["weigh-by-piece"] = (count, piece) =>
    count * piece;

  // sweetener; if the sweetener is the share s of the finished, the liquid is the share 1 − s; volumes that add.
  formulas["of-finished-volume"] = (liquid, share) =>
    liquid * share / (1.0 - share);

  // density of honey; Specific gravity of honey by moisture (table after White and Wedmore), specific gravity by moisture; honey of 13 to 21 % water at 20 °C.
  formulas["honey-density"] = (moisture, water) =>
    look("honey-gravity", moisture) * water;

  // volume once dissolved; USP 32–NF 27, monograph Syrup, Syrup: 850 g of sucrose make 1,000 mL; syrups of 60 to 70 % sugar within 0.2 %; thinner ones within 0.3 %.
  formulas["takes-up"] = (weight, eachGram) =>
    weight * eachGram;

  // dissolved solids; what is not water; always.
  formulas["dry-solids"] = (weight, water) =>
    weight * (1.0 - water);

  // dissolved solids, by weight; Pharmaceutics and Compounding Laboratory: Preserving Syrups, strength of a syrup as per cent by weight; what the plants give to the liquid (1 to 3 %) is left out.
  formulas["solids"] = (solids, everything) =>
    sum([solids], (i) => one(solids, i)) / everything;

  // moisture; per cent by weight; always.
  formulas["moisture"] = (water, everything) =>
    water / everything;

  // component; plain proportion; always.
  formulas["component"] = (weight, share) =>
    weight * share;

  // sugar in the honey; drier honey holds the same sugars in less water; blossom honeys.
  formulas["sugar-in-honey"] = (weight, printed, moisture, printedWater) =>
    weight * printed * (1.0 - moisture) / (1.0 - printedWater);

  // water in an ingredient; the definition of moisture; always.
  formulas["water-of"] = (weight, moisture) =>
    weight * moisture;

  // the rest; a balance; always.
  formulas["rest"] = (whole, part) =>
    whole - part;

  // amount of substance; the definition of molar mass; always.
  formulas["moles"] = (weight, molar) =>
    weight / molar;

  // mole fraction; the definition of the mole fraction; one solute taken alone in all the water.
  formulas["mole-fraction"] = (solute, water) =>
    solute / (solute + water);

  // water activity by one solute; Water activity of solutions by Norrish's equation; constants of Chirife and others, the equation was seen, the constants were not; sucrose to 67 %, glycerol to 60 % by weight.
  formulas["norrish"] = (fraction, constant) =>
    (1.0 - fraction) * exp(0.0 - constant * fraction * fraction);

  // water activity; Estimation of water activity in intermediate moisture foods, the product of each solute's own water activity; syrups; it errs high, on the safe side; not for spirits.
  formulas["water-activity"] = (each) =>
    product([each], (i) => one(each, i));

  // water activity; Estimation of water activity in intermediate moisture foods, the product of each solute's own water activity; liquids sweetened with honey; laboratories differ by 0.03 on honey.
  formulas["water-activity-honey"] = (each) =>
    product([each], (i) => one(each, i));

  // sugar in sugar and water; per cent by weight; what else is dissolved is left out.
  formulas["sucrose-share"] = (sucrose, water) =>
    sucrose / (sucrose + water);

  // pure alcohol; the definition of per cent by volume; at 20 °C.
  formulas["pure-alcohol"] = (spirit, strength) =>
    spirit * strength;

  // pure alcohol by weight; International Recommendation R 22: International alcoholometric tables, 789.24 kg/m³ at 20 °C; at 20 °C.
  formulas["alcohol-weight"] = (alcohol) =>
    alcohol * 0.78924;

  // alcohol by weight; International Recommendation R 22: International alcoholometric tables, general formula at 20 °C, turned round; alcohol and water at 20 °C.
  formulas["share-by-weight"] = (strength) =>
    look("spirit-share", strength);

  // density of the spirit; International Recommendation R 22: International alcoholometric tables, general formula at 20 °C; alcohol and water at 20 °C.
  formulas["spirit-density"] = (share) =>
    look("spirit-density", share);

  // alcohol by volume; volumes of spirit and syrup are added; no measurements were found, so 1.5 % is allowed for; spirit stirred into a syrup.
  formulas["alcohol-by-volume"] = (alcohol, finished) =>
    alcohol / finished;

  // alcohol in a dose; plain proportion; a well stirred bottle.
  formulas["alcohol-per-dose"] = (alcohol, dose, finished) =>
    alcohol * dose / finished;

  // held by sugar; Pharmaceutics and Compounding Laboratory: Preserving Syrups, free water and the alcohol that covers it; honey's solids are counted as sugar.
  formulas["held-by-sugar"] = (solids) =>
    sum([solids], (i) => one(solids, i)) * (0.53 + 0.647);

  // held by glycerin; Pharmaceutics and Compounding Laboratory: Preserving Syrups, free water and the alcohol that covers it; glycerin preserves an equal volume beside its own.
  formulas["held-by-glycerin"] = (glycerin) =>
    2.0 * glycerin;

  // free water; Pharmaceutics and Compounding Laboratory: Preserving Syrups, free water and the alcohol that covers it; a screen used in teaching, not a test of shelf life.
  formulas["free-water"] = (finished, held) =>
    greater(0.0, finished - sum([held], (i) => one(held, i)));

  // alcohol in the free water; Pharmaceutics and Compounding Laboratory: Preserving Syrups, free water and the alcohol that covers it; where no water is free, all of it is covered.
  formulas["covered"] = (alcohol, free) =>
    (0.001 < free ? sum([alcohol], (i) => one(alcohol, i)) / free : 1.0);

  // acetic acid; per cent weight in volume; vinegar in watery liquids.
  formulas["acidity"] = (acid, finished) =>
    acid / finished;

  // acetic acid brought; per cent weight in volume; always.
  formulas["acid-of"] = (vinegar, acidity) =>
    vinegar * acidity;

  // share by volume; per cent by volume; volumes that add.
  formulas["share-of-finished"] = (part, finished) =>
    part / finished;

  // share by weight; per cent by weight; always.
  formulas["share-of-two"] = (part, other) =>
    part / (part + other);

  // spirit to take; the pure alcohol stays the same; made up to the mark.
  formulas["spirit-for"] = (finished, wanted, strength) =>
    finished * wanted / strength;

  // water to add, by weight; International Recommendation R 22: International alcoholometric tables, weights add where volumes shrink; alcohol and water.
  formulas["water-to-add"] = (spirit, share, wanted) =>
    spirit * share / wanted - spirit;

  // water to add, by the kitchen's rule; volumes are taken as if they added; near enough below 60 % by volume.
  formulas["water-by-rule"] = (spirit, strength, wanted) =>
    spirit * strength / wanted - spirit;

  // alcohol by volume; International Recommendation R 22: International alcoholometric tables, general formula at 20 °C; alcohol and water at 20 °C.
  formulas["by-volume"] = (share) =>
    share * look("spirit-density", share) / 0.78924;

  // doses; plain proportion; as many as are poured out level.
  formulas["doses"] = (finished, dose) =>
    finished / dose;

  // doses; plain proportion; well mixed.
  formulas["doses-by-weight"] = (finished, dose) =>
    finished / dose;

  // doses; plain proportion; pieces of one weight.
  formulas["doses-by-piece"] = (pieces, dose) =>
    pieces / dose;

  // a dose of the whole; plain proportion; well mixed.
  formulas["share-of-whole"] = (dose, finished) =>
    dose / finished;

  // a dose of the whole; plain proportion; pieces of one weight.
  formulas["share-of-pieces"] = (dose, pieces) =>
    dose / pieces;

  // energy in a dose; plain proportion; what the plants give is left out.
  formulas["share-of-energy"] = (share, energy) =>
    share * energy;

  // days; plain proportion; nobody misses a dose.
  formulas["days"] = (doses, daily, people) =>
    doses / (daily * people);

  // bottles; plain proportion; bottles filled to their measure.
  formulas["bottles"] = (finished, bottle) =>
    finished / bottle;

  // plant in the liquid; the liquid left in the marc is full strength, so its share is not in the bottle; what is not volatile.
  formulas["passed-on"] = (plants, share) =>
    plants * share;

  // plant in a dose; plain proportion; a well stirred bottle.
  formulas["plant-per-dose"] = (plant, dose, finished) =>
    plant * dose / finished;

  // in a dose; plain proportion; a well stirred bottle.
  formulas["weight-per-dose"] = (weight, dose, finished) =>
    weight * dose / finished;

  // plant a day; plain proportion; the larger dose each time.
  formulas["plant-per-day"] = (dose, daily) =>
    dose * daily;

  // of a constituent; plain proportion; as if all of it passed into the liquid; the content differs from lot to lot.
  formulas["contained"] = (plant, content) =>
    plant * content;

  // against the ceiling; plain proportion; one day.
  formulas["share-of-ceiling"] = (taken, most) =>
    taken / most;

  // on one day, together; plain addition; every recipe taken as often as it says.
  formulas["taken-together"] = (each) =>
    sum([each], (i) => one(each, i));

  // energy; plain proportion; always.
  formulas["energy-of"] = (weight, eachGram) =>
    weight * eachGram;

  // energy in all; plain addition; always.
  formulas["add-energy"] = (each) =>
    sum([each], (i) => one(each, i));

  // energy in a dose; plain proportion; a well stirred bottle; what the plants give is left out.
  formulas["energy-per-dose"] = (energy, dose, finished) =>
    energy * dose / finished;

  // plant in the finished; per cent weight in volume: grams in 100 mL; what is not volatile.
  formulas["strength"] = (plant, finished) =>
    plant / finished;

  // how thin the air is; International Standard Atmosphere (ISO 2533), lowest layer; 0 to 5,000 m.
  formulas["thin-air"] = (altitude) =>
    1.0 - 2.25577e-5 * altitude;

  // pressure of the air; International Standard Atmosphere (ISO 2533), lowest layer; 0 to 5,000 m, in average weather.
  formulas["air-pressure"] = (thin) =>
    101325.0 * pow(thin, 5.25588);

  // water boils at; Vapour pressures of water by Antoine's equation (handbook constants), water, 1 to 100 °C; 55 to 130 kPa.
  formulas["boiling"] = (pressure) =>
    1730.63 / (8.07131 - ln(pressure / 133.322) / 2.302585092994046) - 233.426;

  // stage at this altitude; On Food and Cooking, 1 °C lower for each 1,000 ft; a guide; test in cold water.
  formulas["stage-here"] = (stage, altitude) =>
    stage - altitude * 0.00328084;

  // rise in temperature; plain subtraction; always.
  formulas["rise"] = (from, to) =>
    to - from;

  // heat to warm it; heat is weight times what a gram takes; watery liquids; the pan's own warming is left out.
  formulas["heat-to-warm"] = (weight, rise) =>
    weight * 0.001 * rise;

  // time on the stove; heat over what reaches the water a minute; within a third either way.
  formulas["time-on-stove"] = (heat, power, reaches) =>
    heat / (power * reaches);

  // time to cool; Newton's law of cooling; an estimate: lid, size and draught decide.
  formulas["cooling-time"] = (pace, from, to, around) =>
    pace * ln((from - around) / (to - around));

  // parts of the strong; MD0802: Pharmaceutical Calculations, alligation; a strength between the two; weights, or volumes taken as if they added.
  formulas["parts-of-strong"] = (wanted, weak) =>
    wanted - weak;

  // parts of the weak; MD0802: Pharmaceutical Calculations, alligation; a strength between the two; weights, or volumes taken as if they added.
  formulas["parts-of-weak"] = (strong, wanted) =>
    strong - wanted;

  // of the strong; MD0802: Pharmaceutical Calculations, alligation; volumes taken as if they added.
  formulas["strong-of"] = (whole, strongParts, weakParts) =>
    whole * strongParts / (strongParts + weakParts);

  // volume it makes; what is dissolved stays the same; made up to the mark.
  formulas["diluted-to"] = (held, wanted) =>
    held / wanted;

  // child's dose by Young; Clark’s rule and the rules beside it (encyclopedia article), a rule of history; history, for teaching only; not a dose.
  formulas["young"] = (adult, age) =>
    adult * age / (age + 6311520.0);

  // child's dose by Cowling; Clark’s rule and the rules beside it (encyclopedia article), a rule of history; history, for teaching only; not a dose.
  formulas["cowling"] = (adult, nextBirthday) =>
    adult * nextBirthday / 12623040.0;

  // child's dose by Clark; Clark’s rule and the rules beside it (encyclopedia article), a rule of history; history, for teaching only; not a dose.
  formulas["clark"] = (adult, body) =>
    adult * body / 68038.8555;

  // infant's dose by Fried; Clark’s rule and the rules beside it (encyclopedia article), a rule of history; history, for teaching only; not a dose.
  formulas["fried"] = (adult, age) =>
    adult * age / 6574500.0;

  // child's dose by surface; Clark’s rule and the rules beside it (encyclopedia article), a rule of history; history, for teaching only; not a dose.
  formulas["by-surface"] = (adult, surface) =>
    adult * surface / 1.73;

  // a day at most; plain proportion; every day for a lifetime, unless its source says otherwise.
  formulas["for-the-body"] = (body, each) =>
    body * each;

  // plant at most; plain proportion; the content differs from lot to lot.
  formulas["holds-ceiling"] = (ceiling, content) =>
    ceiling / content;

  // temperature of the mixture; heat lost by the one is gained by the other; watery liquids; the pot's own heat is left out.
  formulas["mixed-temperature"] = (weight, temperature) =>
    sum([weight, temperature], (i) => one(weight, i) * one(temperature, i)) / sum([weight], (i) => one(weight, i));

  // whole packs; as a cost sheet is kept on paper; weighed goods.
  formulas["packs"] = (needed, holds) =>
    Math.ceil(needed / holds - PARTED);

  // bought, with whole packs; as a cost sheet is kept on paper; one price a pack.
  formulas["cost-of-packs"] = (packs, price) =>
    packs * price;

  // as used; as a cost sheet is kept on paper; weighed goods; the rest of the pack is kept.
  formulas["cost-used"] = (needed, holds, price) =>
    needed / holds * price;

  // as used; as a cost sheet is kept on paper; measured goods; the rest of the pack is kept.
  formulas["cost-used-by-volume"] = (needed, holds, price) =>
    needed / holds * price;

  // costs together; as a cost sheet is kept on paper; always.
  formulas["add-costs"] = (each) =>
    sum([each], (i) => one(each, i));

  // cost of each; as a cost sheet is kept on paper; shared alike.
  formulas["cost-each"] = (cost, count) =>
    cost / count;

  // students that pay for it; as a cost sheet is kept on paper; a fee above what each student costs.
  formulas["break-even"] = (fixed, fee, variable) =>
    Math.ceil(fixed / (fee - variable) - PARTED);

  // liquid to each gram; plain proportion; by weight and volume.
  formulas["liquid-to-each"] = (liquid, plants) =>
    liquid / plants;

  // lost in a minute; measured before and after, at a steady simmer; that pot, that stove, that lid.
  formulas["pot-test"] = (away, time) =>
    away / time;

  // alcohol by volume; 27 CFR 5.11 and 19.1: proof and proof gallon, twice the per cent by volume; United States, at 60 °F.
  formulas["of-proof"] = (proof) =>
    proof / 200.0;

  // volume of the drops; plain proportion; a dropper that was counted out.
  formulas["volume-of-drops"] = (drops, dropper) =>
    drops / dropper;

  globalThis.stillroomFormulas = { formulas, relations, pow, greater };
})();
