"use strict";
(() => {
  const index = globalThis.stillroomIndex;
  const form = document.querySelector(".finder");
  if (!index || !form) return;

  const apart = new Map(index.plain.flatMap(([letters, to]) => [...letters].map((letter) => [letter, to])));
  const plain = (text) => [...text.normalize("NFC").toLowerCase()].map((letter) => apart.get(letter) ?? letter).join("")
    .replace(/['\u2019\p{M}]/gu, "").replace(/[^\p{L}\p{N}]+/gu, " ").trim();

  const names = index.entries.map(([name, , , also]) => [plain(name), plain(also)]);

  const begins = (text, word) => text.startsWith(word) || text.includes(` ${word}`);
  const worth = (word) => {
    const worths = names.map(([name, also]) => {
      if (name === word) return 16;
      if (name.startsWith(word)) return 12;
      if (begins(name, word)) return 8;
      return begins(also, word) ? 6 : 0;
    });
    if (word.length < 3) return worths;
    for (const [known, places] of index.words) {
      if (!known.startsWith(word)) continue;
      for (const place of places) worths[place] = Math.max(worths[place], known === word ? 3 : 1);
    }
    return worths;
  };

  const find = (text) => {
    const words = plain(text).split(" ").filter(Boolean);
    if (!words.length) return [];
    const each = words.map(worth);
    return index.entries
      .map((entry, n) => ({ entry, n, worth: each.every((all) => all[n]) ? each.reduce((sum, all) => sum + all[n], 0) : 0 }))
      .filter((hit) => hit.worth > 0)
      .sort((a, b) => b.worth - a.worth || a.n - b.n);
  };

  const box = form.querySelector("input");
  const list = document.getElementById("found");
  const count = document.getElementById("found-count");
  const letters = document.querySelectorAll(".letter");
  const MOST = 40;

  const show = () => {
    const sought = box.value.trim();
    const hits = find(sought);
    list.replaceChildren(...hits.slice(0, MOST).map(({ entry: [name, href, kind, also] }) => {
      const item = document.createElement("li");
      const link = document.createElement("a");
      const beside = document.createElement("span");
      link.href = href;
      link.textContent = name;
      beside.className = "kind";
      beside.textContent = also ? `${index.kinds[kind]}; ${also}` : index.kinds[kind];
      link.append(beside);
      item.append(link);
      return item;
    }));
    for (const letter of letters) letter.hidden = Boolean(sought);
    const { none, one, some } = count.dataset;
    count.textContent = !sought ? "" : !hits.length ? none : hits.length === 1 ? one : some.replace("{count}", hits.length);
    history.replaceState(null, "", sought ? `#?${encodeURIComponent(sought)}` : location.pathname);
  };

  document.getElementById("find").hidden = false;
  box.addEventListener("input", show);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    list.querySelector("a")?.focus();
  });
  const move = (event, step) => {
    const stops = [box, ...list.querySelectorAll("a")];
    const next = stops[stops.indexOf(document.activeElement) + step];
    if (next) { next.focus(); event.preventDefault(); }
  };
  document.getElementById("find").addEventListener("keydown", (event) => {
    if (event.key === "ArrowDown") move(event, 1);
    if (event.key === "ArrowUp") move(event, -1);
    if (event.key === "Escape") { box.value = ""; box.focus(); show(); }
  });
  if (location.hash.startsWith("#?")) {
    try { box.value = decodeURIComponent(location.hash.slice(2)); } catch { /* a broken address asks for nothing */ }
  }
  if (box.value) show();
})();
