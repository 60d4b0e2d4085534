  // ---- How numbers are printed (the rule of measure/decimal.rs).

  const TENS = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];
  const NBSP = "\u00a0";
  const scaled = (value, places) => Math.floor(Math.abs(value) * TENS[Math.min(places, 9)] + 0.5);
  const rounded = (value, places) => {
    const size = scaled(value, places) / TENS[Math.min(places, 9)];
    return value < 0 && size > 0 ? -size : size;
  };
  const decimal = (value, places) => {
    if (!Number.isFinite(value)) return "—";
    const after = Math.min(places, 9);
    const size = scaled(value, after);
    const digits = BigInt(Math.min(size, 2 ** 120)).toString().padStart(after + 1, "0");
    const whole = digits.slice(0, digits.length - after).replace(/\B(?=(\d{3})+$)/g, ",");
    return (value < 0 && size > 0 ? "−" : "") + whole + (after ? `.${digits.slice(-after)}` : "");
  };
  const usualPlaces = (value, unit) => {
    const size = Math.abs(value * unit.printed);
    if (unit.kind === "money") return unit.places;
    if (Math.abs(size - Math.round(size)) < 1e-9) return 0;
    const fine = unit.kind === "mass" || unit.kind === "volume" || unit.printed === 100;
    if (size >= 100) return 0;
    if (size >= 10) return Math.min(unit.places, 1);
    if (size < 0.1 && fine) return unit.places + 2;
    return size < 1 && fine ? unit.places + 1 : unit.places;
  };
  const show = (value, unit, places) => decimal(value * unit.printed, places) + (unit.text && NBSP + unit.text);
  const showUsual = (value, unit) => show(value, unit, usualPlaces(value, unit));

  // ---- What a kitchen can measure (measure/kitchen.rs). `toward` is "near", "up" or "down".

  const TINY = 1e-12;
  const allows = (toward, measured, exact) => toward === "near"
    || (toward === "up" ? measured >= exact * (1 - TINY) : measured <= exact * (1 + TINY));
  const steps = (toward, value) => toward === "near" ? Math.floor(value + 0.5)
    : toward === "up" ? Math.ceil(value * (1 - TINY)) : Math.floor(value * (1 + TINY));
  const nearest = (rungs, to) => rungs.reduce((best, rung) =>
    !best || Math.abs(rung[0] - to) < Math.abs(best[0] - to) ? rung : best, null);
  // US spoons, cups and jars: one measure within closeness, else two, else nothing.
  const volumeUs = (ml, close, toward) => {
    if (!Number.isFinite(ml) || ml <= 0) return "";
    const fits = (measured) => allows(toward, measured, ml) && Math.abs(measured - ml) <= close * ml * (1 + TINY);
    const single = nearest(book.rungs.filter(([size]) => fits(size)), ml);
    if (single) return single[1];
    const first = book.rungs.findLast(([size]) => size <= ml);
    if (!first) return "";
    const worth = close / 4 * ml;
    const second = nearest(book.rungs.filter(([size]) =>
      size < first[0] && size >= worth && fits(first[0] + size)), ml - first[0]);
    return second ? `${first[1]} + ${second[1]}` : "";
  };
  const counted = (whole, num, den, unit) =>
    (num === 0 ? `${whole}` : whole === 0 ? `${num}/${den}` : `${whole}${NBSP}${num}/${den}`) + NBSP + unit;
  const massUs = (g, close, toward) => {
    if (!Number.isFinite(g) || g <= 0) return "";
    const ounces = g / book.ounce;
    if (ounces > 1e6) return "";
    const parts = ounces < 16 ? 4 : ounces < 160 ? 2 : 1;
    const found = steps(toward, ounces * parts);
    if (found < 1 || Math.abs(found / parts * book.ounce - g) > close * g * (1 + TINY)) return "";
    const [pounds, over] = [Math.floor(found / (16 * parts)), found % (16 * parts)];
    const [whole, part] = [Math.floor(over / parts), over % parts];
    const text = part === 2 && parts === 4 ? counted(whole, 1, 2, "oz") : counted(whole, part, parts, "oz");
    if (pounds === 0) return text;
    return over === 0 ? `${pounds}${NBSP}lb` : `${pounds}${NBSP}lb ${text}`;
  };
  const flOz = (ml) => decimal(ml / book.fluidOunce, 1).replace(/\.0$/, "") + NBSP + "fl oz";
  const oz = (g) => decimal(g / book.ounce, 1) + NBSP + "oz";
  const minutes = (min) => {
    if (!Number.isFinite(min) || min < 0) return decimal(min, 0);
    if (min > 0 && min < 0.5) return `under 1${NBSP}min`;
    const count = (number, one, many) => decimal(number, 0) + NBSP + (number === 1 ? one : many);
    const all = Math.floor(min + 0.5);
    const [days, hours, rest] = [Math.floor(all / 1440), Math.floor(all / 60), all % 60];
    if (all > 2880) {
      const over = Math.floor(all % 1440 / 60);
      if (over === 0 && rest === 0) {
        return days % 7 === 0 && days >= 14 ? count(days / 7, "week", "weeks") : count(days, "day", "days");
      }
      return `${count(days, "day", "days")} ${minutes(all % 1440)}`;
    }
    if (hours === 0) return count(rest, "min", "min");
    return count(hours, "h", "h") + (rest ? ` ${count(rest, "min", "min")}` : "");
  };
  const temperatureText = (celsius) =>
    `${decimal(celsius, 0)}${NBSP}°C (${decimal(celsius * 1.8 + 32, 0)}${NBSP}°F)`;

  // ---- What a reader writes (measure/read.rs): a number, and a unit where it is not the one beside the blank.

  const VULGAR = {
    "½": 1 / 2, "⅓": 1 / 3, "⅔": 2 / 3, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
  };
  const NUMBER = /^(?:(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d+))?(?:\s*\/\s*(\d+))?|\.(\d+))?(?:\s*([½⅓⅔¼¾⅛⅜⅝⅞])|\s+(\d+)\s*\/\s*(\d+))?/u;
  // The number a text begins with, and the rest of the text; nothing where it begins with none.
  const number = (text) => {
    const found = NUMBER.exec(text);
    const [all, whole, after, under, only, vulgar, num, den] = found;
    if (!all) return null;
    if (under !== undefined && (after !== undefined || vulgar || num)) return null;
    let value = Number(`${(whole ?? "0").replaceAll(",", "")}.${after ?? only ?? "0"}`);
    if (under !== undefined) value /= Number(under);
    if (vulgar) value += VULGAR[vulgar];
    if (num) value += Number(num) / Number(den);
    return [value, text.slice(all.length).trim()];
  };
  const spelling = (text) => text.replace(/[.()]/g, "").replaceAll("-", " ").replace(/[º˚]/g, "°").replace(/\s+/g, " ").trim();
  // What a text comes to in a line's unit, as { value } or as { fault: KIND, of: TEXT }. `usual` is the unit meant
  // where none is written; none means the line's own.
  const read = (text, unit, usual = "") => {
    const found = number(text.trim());
    if (!found) return { fault: text.trim() ? "no-number" : "empty", of: text.trim() };
    const [value, rest] = found;
    // 1,5 and 1 000 could mean two things.
    if (/^[,\d]/.test(rest)) return { fault: "no-number", of: text.trim() };
    if (!Number.isFinite(value)) return { fault: "no-number", of: text.trim() };
    const name = spelling(rest || usual);
    if (!(value > 0) && !["temperature", "length"].includes(unit.kind)) return { fault: "nothing", of: text.trim() };
    if (value > 1e9) return { fault: "too-much", of: text.trim() };
    if (!name || name === spelling(unit.text)) return { value: value / unit.printed };
    const known = book.units.find(([names]) => names.includes(name) || names.includes(name.toLowerCase()));
    if (!known) return { fault: "unknown-unit", of: rest };
    const [names, kind, [over, under]] = known;
    if (names.includes("oz") && unit.kind === "volume") return { fault: "ounce", of: rest };
    // A share may be written in per cent, and a per cent of whatever basis by the bare sign.
    const share = kind === "%" && (unit.kind === "%" || unit.text.startsWith("%") || !unit.text);
    if (kind !== unit.kind && !share) return { fault: "other-kind", of: text.trim() };
    // In whole numbers, so that 34 fl oz are as many millilitres as an author's are.
    return { value: (names.includes("°f") ? value - 32 : value) * over / under };
  };
