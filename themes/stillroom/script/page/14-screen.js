// The screen: a tablet on a shelf goes dark while the hands are in the bowl. A page has one screen, however many recipes
// it has buttons at; they all say the same.
if (navigator.wakeLock) {
  const all = [];
  let wanted = false;
  let lock = null;
  let said = null;
  const show = () => { for (const button of all) button.setAttribute("aria-pressed", String(wanted)); };
  const ask = async () => {
    try {
      lock = await navigator.wakeLock.request("screen");
      // Pressed again while the answer was under way.
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
  // The browser lets go of it whenever the page is out of sight.
  document.addEventListener("visibilitychange", () => {
    if (wanted && document.visibilityState === "visible") ask();
  });
}
