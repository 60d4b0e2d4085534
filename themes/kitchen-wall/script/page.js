"use strict";
// What a page can do besides being read: keep the screen lit, walk through the steps, show one system of measures,
// put a table in another order. Without it everything is there, in the book's own order.

// From a host the book is kept for reading without a connection; from a disk it needs nothing of the kind.
const root = new URL(".", document.currentScript.src);
if (root.protocol.startsWith("http") && "serviceWorker" in navigator) {
  navigator.serviceWorker.register(new URL("sw.js", root), { updateViaCache: "none" }).catch(() => { /* then it is read with one */ });
}

const make = (name, words) => Object.assign(document.createElement(name), { textContent: words });

// A link to something folded away opens it. Newer browsers do so by themselves, older ones are helped.
const unfold = () => {
  let target = null;
  try { target = document.getElementById(decodeURIComponent(location.hash.slice(1))); } catch { /* leads nowhere */ }
  const closed = target?.closest("details:not([open])");
  if (!closed) return;
  for (let fold = closed; fold; fold = fold.parentElement.closest("details")) fold.open = true;
  target.scrollIntoView();
};
unfold();
addEventListener("hashchange", unfold);

// The screen: a tablet on a shelf goes dark while the hands are in the bowl.
for (const place of document.querySelectorAll(".awake")) {
  if (!navigator.wakeLock) break;
  const button = make("button", place.dataset.keep);
  const said = make("span", "");
  button.type = "button";
  said.setAttribute("role", "status");
  place.append(button, " ", said);
  place.hidden = false;
  let wanted = false;
  let lock = null;
  const show = () => button.setAttribute("aria-pressed", String(wanted));
  const ask = async () => {
    try {
      lock = await navigator.wakeLock.request("screen");
      // Pressed again while the answer was under way.
      if (!wanted) lock.release();
    } catch {
      wanted = false;
      said.textContent = place.dataset.refused;
    }
    show();
  };
  show();
  button.addEventListener("click", () => {
    wanted = !wanted;
    said.textContent = "";
    show();
    if (wanted) ask(); else lock?.release();
  });
  // The browser lets go of it whenever the page is out of sight.
  document.addEventListener("visibilitychange", () => {
    if (wanted && document.visibilityState === "visible") ask();
  });
}

// The steps, one at a time. Back from the first one leads to all of them again. In the booklet there are no buttons.
for (const walk of document.querySelectorAll(".walk:has(.pace)")) {
  const steps = [...walk.querySelectorAll(".work > li")];
  const pace = walk.querySelector(".pace");
  const at = pace.querySelector(".pace-at");
  const buttons = [...pace.querySelectorAll("button")];
  let now = -1;
  // A button that has nowhere to go keeps the finger's place: it is told to be off, not taken away.
  const show = () => {
    steps.forEach((step, n) => {
      if (n === now) step.setAttribute("aria-current", "step"); else step.removeAttribute("aria-current");
    });
    at.textContent = now < 0 ? "" : at.dataset.says.replace("{number}", now + 1).replace("{count}", steps.length);
    for (const button of buttons) {
      const next = now + Number(button.value);
      button.setAttribute("aria-disabled", String(next < -1 || next >= steps.length));
    }
  };
  show();
  pace.hidden = steps.length < 2;
  for (const button of buttons) {
    button.addEventListener("click", () => {
      if (button.getAttribute("aria-disabled") === "true") return;
      now += Number(button.value);
      show();
      (steps[now] || walk).scrollIntoView({ block: "start", behavior: "instant" });
    });
  }
}

// The choice of measures, kept for every page of the book. A browser may refuse to keep anything.
const KEPT = "stillroom-measures";
const keep = (choice) => { try { localStorage.setItem(KEPT, choice); } catch { /* for this page alone, then */ } };
const kept = () => { try { return localStorage.getItem(KEPT); } catch { return null; } };

const choices = [...document.querySelectorAll(".choice button")];
const choose = (choice) => {
  document.documentElement.dataset.measures = choice;
  for (const button of choices) button.setAttribute("aria-pressed", String(button.value === choice));
};
choose(choices.some((button) => button.value === kept()) ? kept() : "both");
for (const group of document.querySelectorAll(".choice")) group.hidden = false;
for (const button of choices) {
  button.addEventListener("click", () => { choose(button.value); keep(button.value); });
}

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
    const button = make("button", "");
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
