"use strict";
(() => {
  const fill = (text, holes) => text.replace(/\{(\w+)\}/g, (all, hole) => holes[hole] ?? all);
  const say = (name, holes = {}) => fill(stillroomWords[name], holes);
  const make = (name, attributes, ...inside) => {
    const made = document.createElement(name);
    for (const attribute in attributes) made.setAttribute(attribute, attributes[attribute]);
    made.append(...inside);
    return made;
  };
  const faults = {
    "no-number": say("no-number"), "too-much": say("too-much"), "unknown-unit": say("unknown-unit"), ounce: say("ounce"),
    "other-kind": say("other-kind"),
  };
  globalThis.stillroomSaid = { fill, say, make, faults };
})();
