// The choice of measures, kept for every page of the book. A browser may refuse to keep anything.
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
