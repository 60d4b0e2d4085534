"use strict";
globalThis.stillroomCopybook = (question) => {
  const { fill, say, make, faults } = stillroomSaid;
  const { figures, option, order } = JSON.parse(question.querySelector(".check-data").textContent);
  const line = question.querySelector(".answer-line");
  const text = (within, part) => within?.querySelector(part)?.textContent ?? "";
  const options = [...question.querySelectorAll(".options > li")];
  const called = `${question.id}-name`;
  const within = make("p", { class: "under", id: `${question.id}-within` }, order ? say("letters-in-order") : text(line, ".under"));


  const blank = (n, name, unit) => {
    const id = `${question.id}-${n}`;
    const input = make("input", { type: "text", id, autocomplete: "off", autocapitalize: "off", "aria-describedby": `${id}-unit ${within.id}` });
    const row = make("div", { class: "slate-row" }, make("label", { for: id }, name), input, make("span", { class: "slate-unit", id: `${id}-unit` }, unit));
    return { input, row };
  };
  const FAULTS = { ...faults, empty: say("write-first") };
  const figure = ([right, unit, usual, near], n) => {
    const [name, shown] = [".asked-for", ".asked-in"].map((part) => text(line.querySelectorAll(".asked")[n], part));
    const { input, row } = blank(n, name || text(line, ".asks"), shown);
    const check = () => {
      const written = unit.kind === "money" && shown ? input.value.replace(shown, "") : input.value;
      const { value = 0, fault, of } = stillroomReader.read(written, unit, usual);
      return fault && fault !== "nothing" ? { fault: fill(FAULTS[fault], { text: of, unit: shown || say("plain-number") }), name }
        : { right: Math.abs(value - right) <= near, name: name || input.value.trim() };
    };
    return { input, row, check };
  };
  const letters = (right) => {
    const { input, row } = blank(0, text(line, ".asks"), "");
    const letter = (place) => String.fromCharCode(97 + place);
    const all = options.map((_, place) => letter(place));
    const check = () => {
      const given = input.value.toLowerCase().match(/\p{L}/gu) ?? [];
      const strange = given.find((one) => !all.includes(one));
      const twice = given.find((one, n) => given.indexOf(one) < n);
      const missing = all.filter((one) => !given.includes(one)).join(", ");
      const fault = !given.length ? say("write-first") : strange ? say("no-letter", { text: strange })
        : twice ? say("letter-twice", { text: twice }) : missing ? say("letter-missing", { text: missing }) : "";
      return fault ? { fault } : { right: right.every((place, n) => letter(place) === given[n]), name: given.join(" ") };
    };
    return { input, row, check };
  };
  const choice = (right) => {
    const radios = options.map((item, n) => {
      const radio = make("input", { type: "radio", name: `${question.id}-option`, value: n });
      item.replaceChildren(make("label", {}, radio, make("span", {}, ...item.childNodes)));
      return radio;
    });
    const check = () => {
      const chosen = radios.findIndex((radio) => radio.checked);
      return chosen < 0 ? { fault: say("choose-first") } : { right: chosen === right, name: options[chosen].textContent };
    };
    return { row: question.querySelector(".options"), check };
  };


  const answers = figures ? figures.map(figure) : [order ? letters(order) : choice(option)];
  const status = make("p", { role: "status" });
  const hint = question.querySelector(".hint");
  const form = make("form", { class: "check" }, make("fieldset", { "aria-labelledby": called },
    ...answers.map(({ row }) => row), ...(within.textContent ? [within] : []), make("button", {}, say("check")), status));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const found = answers.map(({ input, check }) => {
      const one = check();
      input?.setAttribute("aria-invalid", !one.right);
      return one;
    });
    const named = (which) => found.filter(which).map(({ name }) => name).join(", ");
    const [right, wrong] = [named((one) => one.right), named((one) => one.right === false)];
    const unread = found.filter(({ fault }) => fault).map(({ fault, name }) => (name ? `${name}: ${fault}` : fault));
    status.textContent = [right && say("right", { text: right }), wrong && say("not-right", { text: wrong }), ...unread,
      wrong && hint && say("see-hint")].filter(Boolean).join(" ");
    if (wrong && hint) hint.open = true;
  });
  form.addEventListener("input", () => { status.textContent = ""; });
  question.querySelector(".ask b").id = called;
  line.before(form);
};
