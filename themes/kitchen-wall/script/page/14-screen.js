// The screen: a tablet on a shelf goes dark while the hands are in the bowl.
for (const place of document.querySelectorAll(".awake")) {
  if (!navigator.wakeLock) break;
  const button = document.createElement("button");
  const said = document.createElement("span");
  button.type = "button";
  button.textContent = place.dataset.keep;
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
