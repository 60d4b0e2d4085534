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
