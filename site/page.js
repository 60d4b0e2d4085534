"use strict";

const root = new URL(".", document.currentScript.src);
if (root.protocol.startsWith("http") && "serviceWorker" in navigator) {
  navigator.serviceWorker.register(new URL("sw.js", root), { updateViaCache: "none" }).catch(() => { /* then it is read with one */ });
}
if (navigator.wakeLock) {
  const all = [];
  let wanted = false;
  let lock = null;
  let said = null;
  const show = () => { for (const button of all) button.setAttribute("aria-pressed", String(wanted)); };
  const ask = async () => {
    try {
      lock = await navigator.wakeLock.request("screen");
      if (!wanted) lock.release();
    } catch {
      wanted = false;
      said.textContent = said.parentNode.dataset.refused;
    }
    show();
  };
  for (const place of document.querySelectorAll(".awake")) {
    const button = document.createElement("button");
    const answer = document.createElement("span");
    button.type = "button";
    button.textContent = place.dataset.keep;
    answer.setAttribute("role", "status");
    place.append(button, " ", answer);
    place.hidden = false;
    all.push(button);
    button.addEventListener("click", () => {
      wanted = !wanted;
      if (said) said.textContent = "";
      said = answer;
      show();
      if (wanted) ask(); else lock?.release();
    });
  }
  show();
  document.addEventListener("visibilitychange", () => {
    if (wanted && document.visibilityState === "visible") ask();
  });
}
const KEPT = "stillroom-measures";
const keep = (choice) => { try { localStorage.setItem(KEPT, choice); } catch { /* for this page alone, then */ } };
const kept = () => { try { return localStorage.getItem(KEPT); } catch { return null; } };

const buttons = [...document.querySelectorAll(".choice button")];
const choose = (choice) => {
  document.documentElement.dataset.measures = choice;
  for (const button of buttons) button.setAttribute("aria-pressed", String(button.value === choice));
};
const known = buttons.some((button) => button.value === kept());
choose(known ? kept() : "both");
for (const group of document.querySelectorAll(".choice")) group.hidden = false;
for (const button of buttons) {
  button.addEventListener("click", () => { choose(button.value); keep(button.value); });
}
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
const rank = (value) => (value === "\u2013" ? 2 : typeof value === "string" ? 1 : 0);
const words = new Intl.Collator(document.documentElement.lang, { numeric: true });
const order = (way) => ([a], [b]) =>
  rank(a) - rank(b) || way * (typeof a === "string" ? words.compare(a, b) : a - b);

for (const table of document.querySelectorAll("table.fold-out")) {
  const body = table.tBodies[0];
  const rows = [...body.rows];
  const sums = table.classList.contains("cost") ? rows.filter((row) => row.classList.contains("base")) : [];
  const heads = [...table.tHead.rows[0].cells];
  heads.forEach((head, column) => {
    const button = document.createElement("button");
    button.type = "button";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const next = { none: "ascending", ascending: "descending", descending: "none" }[head.ariaSort || "none"];
      for (const other of heads) other.ariaSort = null;
      if (next === "none") return body.append(...rows);
      head.ariaSort = next;
      const keyed = rows.filter((row) => !sums.includes(row)).map((row) => [key(row.cells[column]), row]);
      body.append(...keyed.sort(order(next === "ascending" ? 1 : -1)).map(([, row]) => row), ...sums);
    });
  });
}
for (const stove of document.querySelectorAll(".stove")) {
  const says = stove.dataset;
  const list = stove.parentNode.querySelector(".work");
  const over = stove.parentNode.querySelector(".times-up");
  const title = document.title;
  let next;
  const put = (into, name, attributes, text = "") => {
    const made = document.createElement(name);
    for (const [attribute, value] of Object.entries(attributes)) made.setAttribute(attribute, value);
    made.textContent = text;
    into.append(made, " ");
    return made;
  };
  const write = (at, text) => { if (at.textContent !== text) at.textContent = text; };
  const clock = (left) => [3600, 60, 1].map((unit) => String(Math.floor(Math.ceil(left / 1000) / unit) % 60).padStart(2, "0"))
    .join(":").replace(/^(00:)?0?/, "");

  const steps = [...list.children].map((item, n) => {
    const named = (text) => text.replace("{number}", n + 1);
    const tools = put(item, "div", { class: "at-step screen-only" });
    const label = put(tools, "label", {});
    const tick = put(label, "input", { type: "checkbox" });
    label.append(named(says.done));
    const whole = 60000 * (Math.round(item.dataset.minutes) || item.dataset.minutes);
    const step = { tick, whole, left: whole, up: named(says.up) };
    if (!(whole > 0 && whole <= 86400000)) return step;
    const timer = put(tools, "div", { class: "timer", role: "group", "aria-label": named(says.timer) });
    step.clock = put(timer, "span", { role: "timer" });
    step.go = put(timer, "button", { type: "button" });
    step.go.addEventListener("click", () => {
      if (step.end) step.left = Math.max(0, step.end - Date.now()); else step.left ||= whole;
      step.end = step.end ? 0 : Date.now() + step.left;
      show();
    });
    put(timer, "button", { type: "button" }, says.again).addEventListener("click", () => { reset(step); show(); });
    return step;
  });
  const timed = steps.filter((step) => step.clock);
  const reset = (step) => { step.end = 0; step.left = step.whole; };
  const show = () => {
    for (const step of timed) {
      if (step.end && step.end <= Date.now()) step.end = step.left = 0;
      write(step.clock, step.left ? clock(step.end ? step.end - Date.now() : step.left) : says.over);
      write(step.go, step.end ? says.stop : says.start);
    }
    const told = timed.filter((step) => !step.left && !step.tick.checked).map((step) => step.up).join(" ");
    if (told !== over.textContent) {
      over.textContent = told;
      document.title = [...document.querySelectorAll(".times-up")].map((at) => at.textContent).concat(title).join(" ");
    }
    clearTimeout(next);
    if (timed.some((step) => step.end)) next = setTimeout(show, 250);
  };
  show();
  list.addEventListener("change", show);
  const large = stove.querySelector("[value=large]");
  large.addEventListener("click", () => large.setAttribute("aria-pressed", list.classList.toggle("large")));
  stove.querySelector("[value=anew]").addEventListener("click", () => {
    for (const step of steps) { step.tick.checked = false; reset(step); }
    show();
  });
  stove.hidden = false;
}
let asked = {};
const ask = (name) => asked[name] ??= new Promise((done, failed) => {
  const style = name.endsWith(".css");
  const made = document.createElement(style ? "link" : "script");
  if (style) made.rel = "stylesheet"; else made.async = false;
  made[style ? "href" : "src"] = new URL(name, root);
  made.onload = done;
  made.onerror = failed;
  document.head.append(made);
});
const withRules = (...form) => Promise.all(["formulas.js", "reader.js", "words.js", "said.js", ...form].map(ask)).catch((fault) => {
  asked = {};
  throw fault;
});

for (const slate of document.querySelectorAll(".slate")) {
  const begin = slate.querySelector(".slate-begin");
  let fresh = null;
  const open = async (then) => {
    const said = begin.nextElementSibling;
    begin.disabled = true;
    said.textContent = "";
    try {
      await withRules("slate.css", "slate.js");
      fresh ??= stillroomSlate(slate);
      fresh();
      begin.hidden = true;
      then();
    } catch {
      begin.disabled = false;
      said.textContent = said.dataset.failed;
    }
  };
  const sent = () => {
    if (!location.hash.startsWith(`#${slate.id}?`)) return;
    open(() => {
      for (let fold = slate.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
      slate.scrollIntoView();
    });
  };
  slate.hidden = false;
  begin.addEventListener("click", () => open(() => slate.querySelector("input, select").focus()));
  addEventListener("hashchange", sent);
  sent();
}

for (const here of document.querySelectorAll(".check-here")) {
  const begin = here.firstElementChild;
  here.hidden = false;
  begin.addEventListener("click", async () => {
    begin.disabled = true;
    try {
      await withRules("slate.css", "copybook.js");
      const questions = here.nextElementSibling;
      questions.querySelectorAll(".question:not(:has(> .check))").forEach(stillroomCopybook);
      here.hidden = true;
      questions.querySelector("input").focus();
    } catch {
      begin.disabled = false;
      begin.nextElementSibling.textContent = here.dataset.failed;
    }
  });
}
