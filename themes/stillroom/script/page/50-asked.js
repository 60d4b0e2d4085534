// Working with one's own figures, or checking an answer, takes the book's rules and a form: they are asked for only where
// a reader wants them, by its button, or by an address that carries figures.
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
// Where one fails all are asked for again: those after it may have missed it.
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
      // A theme may fold it away.
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
