"use strict";
// What a page can do besides being read: show one system of measures, put a table in another order.
// Without it everything is there, both systems and the book's own order.

// From a host the book is kept for reading without a connection; from a disk it needs nothing of the kind.
const root = new URL(".", document.currentScript.src);
if (root.protocol.startsWith("http") && "serviceWorker" in navigator) {
  navigator.serviceWorker.register(new URL("sw.js", root), { updateViaCache: "none" }).catch(() => { /* then it is read with one */ });
}
