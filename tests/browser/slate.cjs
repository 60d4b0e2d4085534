// The slate by the keyboard alone, on a phone, from the disk: a ratio changed, a volume measured, a target, entries that
// are none, wiped, handed on by its address, kept and forgotten. What it shows is held against what the program prints:
// PROGRAM (STILLROOM in the environment) works the same lessons of CONTENT. Then every recipe's untouched slate is held
// against its page of workings, line by line.
"use strict";
const fs = require("node:fs");
const path = require("node:path");
const { pathToFileURL } = require("node:url");

module.exports = async (browser, site, found) => {
  const { execFileSync } = require("node:child_process");
  const program = process.env.STILLROOM || "stillroom";
  const content = process.env.CONTENT || "content";
  const worked = (...asked) => JSON.parse(execFileSync(program, ["work", "--of", content, "--json", ...asked], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }));
  const printed = (...asked) => execFileSync(program, ["work", "--of", content, ...asked], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
  const lesson = "rose-hip-and-hibiscus-syrup";
  const file = path.join(site, "lessons", `${lesson}.html`);
  const page = await browser.newPage();
  await page.setViewportSize({ width: 320, height: 640 });
  const tell = (fault) => found.set(`slate: ${fault}`, [`lessons/${lesson}.html`]);
  page.on("pageerror", (error) => tell(`script: ${error.message}`));
  const slate = page.locator(".slate").first();
  const blank = (name) => slate.locator(`[data-key="${name}"]`);
  const focused = (what) => what.evaluate((at) => at === document.activeElement);
  // Only keys: Tab until it is there, over a fold by opening it.
  const reach = async (what) => {
    for (let n = 0; n < 300; n += 1) {
      if (await what.count() && await focused(what.first())) return;
      if (await page.evaluate(() => document.activeElement.matches(".slate summary") && !document.activeElement.parentNode.open)) await page.keyboard.press("Enter");
      await page.keyboard.press("Tab");
    }
    tell(`the keyboard does not reach ${what}`);
  };
  // From the head of the slate on, so that not every link of the page is passed each time.
  const fromTop = async (what) => { await slate.evaluate((at) => { at.tabIndex = -1; at.focus(); }); await reach(what); };
  const write = async (name, text) => {
    await fromTop(blank(name));
    await page.keyboard.press("Control+A");
    if (text) await page.keyboard.type(text); else await page.keyboard.press("Delete");
    await page.keyboard.press("Enter");
  };
  const press = async (name) => { await fromTop(slate.locator("button", { hasText: name })); await page.keyboard.press("Enter"); };
  const sideways = async (when) => {
    if (await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth)) tell(`scrolls sideways ${when}`);
  };
  const sums = () => slate.locator(".every:not(details .every)").allTextContents();
  const status = () => slate.locator(".slate-status").textContent();
  // A line of the first sums, as the reader's: the struck one is the book's.
  const line = (name) => slate.locator(".every tr:has(.sum)", { has: page.locator("th", { hasText: new RegExp(`^${name}(yours|changed)?$`) }) }).first().locator(".readings").evaluate((at) => {
    const own = at.querySelector("b");
    return (own && at.firstElementChild.contains(own) ? own : at.firstChild).textContent;
  });
  // The program's print has "id  name  result  between", the number set right.
  const shownBy = (text, name) => new RegExp(`^\\S+ +${name}  +(.+?)(?:  .*)?$`, "m").exec(text)?.[1].trim();
  const same = async (what, name, text) => {
    const [here, there] = [(await line(name)).replaceAll("\u00a0", " "), shownBy(text, name)];
    if (!there || here !== there) tell(`${what}: ${name} is ${here}, by the program ${there}`);
  };

  const start = async (address = pathToFileURL(file).href) => { await page.goto("about:blank"); await page.goto(address); };
  await start();
  await reach(slate.locator(".slate-begin"));
  await page.keyboard.press("Enter");
  await slate.locator(".slate-status").waitFor();
  if (!await focused(slate.locator("input, select").first())) tell("opened, the first blank is not where one stands");

  const WATCHED = ["honey", "honey, weighed", "finished", "dissolved solids", "water activity", "doses", "sugars in a dose"];
  await write("honey to one of liquid", "0.75");
  let program_ = printed(lesson, "--set", "honey=0.75");
  for (const name of WATCHED) await same("a ratio", name, program_);
  await write("strained", "30 fl oz");
  program_ = printed(lesson, "--set", "honey=0.75", "--measured", "strained=30 fl oz");
  for (const name of ["strained", ...WATCHED]) await same("a measured volume", name, program_);
  await sideways("with figures");

  const before = await sums();
  for (const entry of ["abc", "-3", "0", "5 spoons", "3 cups", "1e99"]) {
    await write("honey to one of liquid", entry);
    const at = blank("honey to one of liquid");
    const told = await at.evaluate((one) => one.getAttribute("aria-describedby").split(" ").map((id) => document.getElementById(id)).filter((by) => by?.className === "slate-fault").map((by) => by.textContent).join(""));
    if (!told || await at.getAttribute("aria-invalid") !== "true") tell(`${entry} is not refused in words`);
    if ((await sums()).join() !== before.join()) tell(`${entry} changes what is worked`);
    await sideways(`with ${entry}`);
  }
  await write("honey to one of liquid", "0.75");
  await write("aim", "12");
  if (!/strained/.test(await slate.locator(".slate-row:has([data-key=aim]) .slate-fault").textContent())) tell("a target over what was measured is not refused");
  await write("strained", "");
  await fromTop(blank("by"));
  for (let n = 0; n < 30 && await blank("by").inputValue() !== "rose hips"; n += 1) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  const aimed = worked(lesson, "--set", "honey=0.75", "--aim", "bottles=12 by rose hips");
  const hips = aimed.lines.find(({ name }) => name === "rose hips").value;
  const told = /“rose hips” comes to ([\d.,]+)\u00a0g/.exec(await status())?.[1];
  if (told !== hips.toFixed(hips < 100 ? 1 : 0)) tell(`for 12 bottles it takes ${told} g of rose hips, by the program ${hips}`);
  program_ = printed(lesson, "--set", "honey=0.75", "--aim", "bottles=12 by rose hips");
  for (const name of ["water", "bottles", ...WATCHED]) await same("12 bottles", name, program_);

  // A number keeps its unit when the measures change.
  await write("strained", "800");
  const metric = await sums();
  await fromTop(blank("measures"));
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  if (await blank("strained").inputValue() !== "800 mL") tell(`in other measures 800 stands as ${await blank("strained").inputValue()}`);
  await fromTop(blank("measures"));
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  if ((await sums()).join() !== metric.join()) tell("other measures and back change what is worked");
  await write("strained", "");

  await press("Address");
  const address = await page.evaluate(() => location.href);
  const shared = await sums();
  if (!await focused(slate.locator("input[readonly]")) || await slate.locator("input[readonly]").inputValue() !== address) tell("the address is not shown to copy");
  await sideways("with an address");
  await start(address);
  await slate.locator(".slate-status").waitFor();
  if ((await sums()).join() !== shared.join()) tell("an address gives other figures than it was made of");
  await start(`${pathToFileURL(file).href}#${await slate.getAttribute("id")}?strained=a+lot&unheard+of=3&honey+to+one+of+liquid=1`);
  await slate.locator(".slate-status").waitFor();
  if (!/unheard of/.test(await status()) || !await slate.locator("[aria-invalid=true]").count()) tell("an address with faults does not tell them");
  program_ = printed(lesson, "--set", "honey=1");
  for (const name of WATCHED) await same("an address with faults", name, program_);

  await write("strained", "5 l");
  await write("boiled off a minute, lid on", "");
  await press("Keep");
  if (await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("stillroom-slate:")).length) !== 1) tell("what is to be kept is not");
  await start();
  await reach(slate.locator(".slate-begin"));
  await page.keyboard.press("Enter");
  await slate.locator(".slate-status").waitFor();
  if (await blank("strained").inputValue() !== "5 l") tell("what was kept is not found again");
  await press("Forget");
  if (await page.evaluate(() => Object.keys(localStorage).some((key) => key.startsWith("stillroom-slate:")))) tell("what is forgotten is still there");
  await write("strained", "");
  await write("minutes at a simmer", "2 weeks");
  if (!/less than nothing/.test(await status())) tell(`what cannot be is told as ${await status()}`);
  await press("Wipe");
  program_ = printed(lesson);
  for (const name of ["strained", ...WATCHED]) await same("wiped", name, program_);
  if (await slate.locator("s").count()) tell("wiped, something is still struck");

  // Every recipe, untouched: its lines and those of its page of workings are the same.
  const rows = (all) => all.map((row) => [row.cells[0].firstChild.textContent, (row.querySelector(".readings") || row.cells[2]).firstChild.textContent, (row.querySelector(".result > .under") || { textContent: "" }).textContent].join("|"));
  for (const name of fs.readdirSync(path.join(site, "workings")).filter((one) => one.endsWith(".html"))) {
    const report = (fault) => found.set(`slate: ${fault}`, [...(found.get(`slate: ${fault}`) || []), name]);
    await page.goto(pathToFileURL(path.join(site, "workings", name)).href);
    const sheets = [];
    for (const table of await page.locator("table.every").all()) sheets.push(await table.locator("tbody tr").evaluateAll(rows));
    await page.goto(pathToFileURL(path.join(site, "lessons", name)).href);
    const slates = await page.locator(".slate").all();
    if (slates.length !== sheets.length || !slates.length) report(`${slates.length} slates and ${sheets.length} workings`);
    for (const [n, one] of slates.entries()) {
      await one.locator(".slate-begin").press("Enter");
      await one.locator(".slate-status").waitFor();
      await one.locator("details", { has: page.locator("summary", { hasText: /^Every line$/ }) }).locator("summary").press("Enter");
      const table = one.locator("details > table.every");
      await table.waitFor();
      const here = await table.locator("tbody tr").evaluateAll(rows);
      const other = here.findIndex((row, at) => row !== sheets[n]?.[at]);
      if (here.length !== sheets[n]?.length || other >= 0) report(`${here[other]} on the slate, ${sheets[n]?.[other]} on paper`);
    }
  }
  await page.close();
};
