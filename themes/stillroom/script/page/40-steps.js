// The steps at the stove: ticked off, timed, in large type. The words for it stand over the list; where they do not, as
// in the booklet, nothing is put there. All of it lasts as long as the page.
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
  // 29:59, and 1:05:00 from an hour up.
  const clock = (left) => [3600, 60, 1].map((unit) => String(Math.floor(Math.ceil(left / 1000) / unit) % 60).padStart(2, "0"))
    .join(":").replace(/^(00:)?0?/, "");

  const steps = [...list.children].map((item, n) => {
    const named = (text) => text.replace("{number}", n + 1);
    const tools = put(item, "div", { class: "at-step screen-only" });
    const label = put(tools, "label", {});
    const tick = put(label, "input", { type: "checkbox" });
    label.append(named(says.done));
    // As the step tells it: to the minute. What takes longer than a day outlasts the page.
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
  // What is left is reckoned from the time of day: ticks come late where a page is out of sight, and not while it sleeps.
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
