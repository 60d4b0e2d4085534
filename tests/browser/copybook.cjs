// The copybook by the keyboard alone, on a phone, from the disk: opened, answered wrong and right, in another unit, by
// choosing and in order. Then every question of every lesson is given its own right answer, in figures and as the key
// prints it, and one that is a fifth off.
"use strict";
const fs = require("node:fs");
const path = require("node:path");
const { pathToFileURL } = require("node:url");

module.exports = async (browser, site, found) => {
  const page = await browser.newPage();
  let at = "";
  const tell = (fault) => found.set(`copybook: ${fault}`, [...(found.get(`copybook: ${fault}`) || []), at]);
  page.on("pageerror", (error) => tell(`script: ${error.message}`));
  page.on("request", (request) => request.url().startsWith("file:") || tell(`asks for ${request.url()}`));
  await page.setViewportSize({ width: 320, height: 640 });
  const open = (name) => { at = name; return page.goto(pathToFileURL(path.join(site, name)).href); };
  // The answers of version A as the key prints them, by the questions' numbers.
  const key = async (lesson) => {
    await open(lesson.replace("lessons", "answers"));
    return page.locator(".part").evaluateAll((parts) => Object.fromEntries(parts.map((part) =>
      [parseInt(part.querySelector("h2").textContent, 10), part.querySelector(".answers dd").textContent])));
  };

  const first = "lessons/rose-hip-and-hibiscus-syrup.html";
  const printed = await key(first);
  await open(first);
  const reach = async (what) => {
    for (let n = 0; n < 400; n += 1) {
      if (await page.evaluate((sought) => document.activeElement === document.querySelector(sought), what)) return;
      await page.keyboard.press("Tab");
    }
    tell(`${what} is not reached by Tab`);
  };
  const before = await page.locator("script[src]").count();
  if (before !== 1 || await page.locator(".copybook input").count()) tell("the forms are there before they are asked for");
  await reach(".check-here button");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement.closest(".copybook input"), null, { timeout: 5000 }).catch(() => tell("the first blank does not get the focus"));
  const words = await page.evaluate(() => stillroomWords);
  const says = (name) => words[name].split("{text}")[0];
  const questions = await page.locator(".question:has(.check-data)").evaluateAll((all) => all.map((question) => ({
    id: question.id, number: question.value, ...JSON.parse(question.querySelector(".check-data").textContent),
  })));
  const within = ({ id }, what) => `[id="${id}"] ${what}`;
  const status = (question) => page.locator(within(question, "[role=status]")).textContent();
  const write = async (question, text) => {
    await reach(within(question, "input"));
    await page.keyboard.press("Control+A");
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    return status(question);
  };
  const is = (told, name, what) => { if (!told.startsWith(says(name))) tell(`${what} is told as ${told}`); };

  const volume = questions.find(({ figures }) => figures?.length === 1 && figures[0][1].text === "mL" && !figures[0][2]);
  if (volume) {
    const right = printed[volume.number];
    const ml = parseFloat(right.replace(/,/g, ""));
    is(await write(volume, ""), "write-first", "nothing");
    is(await write(volume, "some"), "no-number", "no number");
    const wrong = await write(volume, `${1.5 * ml} mL`);
    is(wrong, "not-right", "a wrong figure");
    if (wrong.includes(right) || !wrong.endsWith(words["see-hint"])) tell(`a wrong figure is told as ${wrong}`);
    if (!await page.locator(within(volume, ".hint")).getAttribute("open").then((held) => held !== null)) tell("a wrong figure does not open the hint");
    is(await write(volume, right), "right", `the key's ${right}`);
    is(await write(volume, `${(ml / 236.588).toFixed(2)} cups`), "right", `${right} in cups`);
    is(await write(volume, `${(ml / 1000).toFixed(3)} L`), "right", `${right} in litres`);
    is(await write(volume, `${ml} g`), "other-kind", "a weight for a volume");
  } else tell("no question asks for mL");

  const option = questions.find((question) => question.option !== undefined);
  if (option) {
    await reach(within(option, "input"));
    await page.keyboard.press("Enter");
    if (await status(option) !== words["choose-first"]) tell(`no choice is told as ${await status(option)}`);
    await page.keyboard.press("Space");
    const of = await page.locator(within(option, ".options > li")).count();
    for (let place = 0; place < of; place += 1) {
      await page.keyboard.press("Enter");
      is(await status(option), place === option.option ? "right" : "not-right", `option ${place} where ${option.option} is right`);
      await page.keyboard.press("ArrowDown");
    }
  } else tell("no question has options");

  const order = questions.find((question) => question.order);
  if (order) {
    const letters = printed[order.number];
    is(await write(order, [...letters].reverse().join("")), "not-right", "the order turned round");
    is(await write(order, letters.slice(2)), "letter-missing", "an order without its first");
    is(await write(order, letters), "right", `the key's ${letters}`);
    is(await write(order, letters.toUpperCase().replace(/ /g, ", ")), "right", "the order in capitals with commas");
    is(await write(order, letters.replace(/ /g, "")), "right", "the order without blanks");
  } else tell("no question is about order");
  if (await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth)) tell("scrolls sideways");
  const small = await page.locator(".copybook :is(button, input)").evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 43.5).length);
  if (small) tell(`${small} are smaller than 44 px`);
  if (await page.evaluate(() => location.hash || Object.keys(localStorage).some((name) => localStorage[name].includes("mL")))) tell("an answer was kept");

  let count = 0;
  const lessons = path.join(site, "lessons");
  // A former address only leads on.
  const leadsOn = (file) => /http-equiv="?refresh/.test(fs.readFileSync(file, "utf8"));
  const files = fs.readdirSync(lessons).filter((name) => name.endsWith(".html")).map((name) => path.join(lessons, name));
  for (const file of files.filter((name) => !leadsOn(name))) {
    const lesson = path.relative(site, file).replaceAll(path.sep, "/");
    await open(lesson);
    if (!await page.locator(".check-data").count()) continue;
    const answers = await key(lesson);
    await open(lesson);
    for (const begin of await page.locator(".check-here button").all()) {
      await begin.click();
      await begin.waitFor({ state: "hidden" });
    }
    const faults = await page.evaluate(([answers, right, wrong]) => [...document.querySelectorAll(".question:has(.check-data)")].flatMap((question) => {
      const { figures, option, order } = JSON.parse(question.querySelector(".check-data").textContent);
      const form = question.querySelector(".check");
      if (!form) return [`question ${question.value} is no form`];
      const inputs = [...form.querySelectorAll("input")];
      const answer = (texts) => {
        if (option !== undefined) inputs[texts].checked = true;
        else inputs.forEach((input, n) => { input.value = texts[n]; });
        form.requestSubmit();
        return form.querySelector("[role=status]").textContent;
      };
      const faults = [];
      const expect = (texts, begins, not) => {
        const told = answer(texts);
        if (!told.startsWith(begins) || (not && told.includes(not))) faults.push(`question ${question.value}, ${texts}: ${told}`);
      };
      if (figures) {
        const write = (value, { printed, text }) => `${(value * printed).toFixed(9)} ${text}`;
        const all = figures.map(([value, unit]) => write(value, unit));
        const off = figures.map(([value, unit, , near]) => write(value + Math.max(0.2 * Math.abs(value), 2 * near), unit));
        expect(all, right, wrong);
        expect(off, wrong, right);
        if (all.length > 1) {
          const told = answer([all[0], ...off.slice(1)]);
          if (!told.startsWith(right) || !told.includes(wrong)) faults.push(`question ${question.value}, partly right: ${told}`);
        }
        const names = [...question.querySelectorAll(".asked-for")].map((name) => `${name.textContent}: `);
        const key = answers[question.value].split("; ").map((text, n) => text.replace(names[n] ?? "", "").replace(/ \(.*/, ""));
        expect(key, right, wrong);
      } else if (order) {
        const letters = order.map((place) => String.fromCharCode(97 + place)).join(" ");
        expect([letters], right, wrong);
        expect([[...letters].reverse().join("")], wrong, right);
        if (answers[question.value] !== letters) faults.push(`question ${question.value}: the key says ${answers[question.value]}`);
      } else {
        inputs.forEach((_, place) => expect(place, place === option ? right : wrong));
      }
      return faults;
    }), [answers, says("right"), says("not-right")]);
    faults.forEach(tell);
    count += await page.locator(".check").count();
  }
  if (!count) tell("no question is checked");
  await page.close();
};
