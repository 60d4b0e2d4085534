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
