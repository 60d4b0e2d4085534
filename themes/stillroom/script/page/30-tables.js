// What a cell is put in order by: minutes for a time, a number for a figure, else its words. Kilograms and litres
// count as the thousands they are. Marks, the other system and what stands under the figure are not part of it.
const TIMES = { min: 1, h: 60, day: 1440, week: 10080, month: 43830, year: 525960 };
const TIME = /([\d.,]+)\s*(min|h|day|week|month|year)s?(?![a-z])/g;
const number = (text) => parseFloat(text.replaceAll(",", ""));
const key = (cell) => {
  const bare = cell.cloneNode(true);
  for (const beside of bare.querySelectorAll(".under, .against, .us, .and")) beside.remove();
  const text = bare.textContent.trim();
  if (cell.tagName === "TH" || Number.isNaN(number(text))) return text;
  const times = [...text.replace(/^after /, "").matchAll(TIME)];
  if (times.length) return times.reduce((sum, [, count, unit]) => sum + number(count) * TIMES[unit], 0);
  return number(text) * (/^[\d.,]+\s(kg|L)\b/.test(text) ? 1000 : 1);
};
// Numbers before words, and a dash, which is no figure, last whichever way.
const rank = (value) => (value === "\u2013" ? 2 : typeof value === "string" ? 1 : 0);
const words = new Intl.Collator(document.documentElement.lang, { numeric: true });
const order = (way) => ([a], [b]) =>
  rank(a) - rank(b) || way * (typeof a === "string" ? words.compare(a, b) : a - b);

for (const table of document.querySelectorAll("table.fold-out")) {
  const body = table.tBodies[0];
  const rows = [...body.rows];
  // A sum stays under what it sums.
  const sums = table.classList.contains("cost") ? rows.filter((row) => row.classList.contains("base")) : [];
  const heads = [...table.tHead.rows[0].cells];
  heads.forEach((head, column) => {
    const button = document.createElement("button");
    button.type = "button";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      // Upwards, downwards, then as the book has it.
      const next = { none: "ascending", ascending: "descending", descending: "none" }[head.ariaSort || "none"];
      for (const other of heads) other.ariaSort = null;
      if (next === "none") return body.append(...rows);
      head.ariaSort = next;
      const keyed = rows.filter((row) => !sums.includes(row)).map((row) => [key(row.cells[column]), row]);
      body.append(...keyed.sort(order(next === "ascending" ? 1 : -1)).map(([, row]) => row), ...sums);
    });
  });
}
