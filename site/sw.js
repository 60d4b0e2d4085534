"use strict";
importScripts("sw-list.js");
const { printing, files } = self.stillroomKept;
const OWN = `stillroom ${self.registration.scope} `;
const KEPT = OWN + printing;

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(KEPT).then((kept) => kept.addAll(files.map((file) => new Request(file, { cache: "reload" })))).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  const old = (name) => name.startsWith(OWN) && name !== KEPT;
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) return;
  address.search = address.hash = "";
  if (address.pathname.endsWith("/")) address.pathname += "index.html";
  event.respondWith(caches.open(KEPT).then((kept) => kept.match(address.href)).then((found) => found || fetch(request)));
});
