// The steps at the stove, by the keyboard alone, on a phone and on a desk: ticked, timed, in large type, begun again. The
// page's time of day is moved on by hand, with no ticks between, as when a tab wakes; nothing outlives the page.
"use strict";
const path = require("node:path");
const { pathToFileURL } = require("node:url");

module.exports = async (browser, site, found) => {
  for (const width of [320, 1280]) {
    const tell = (fault) => found.set(`at the stove: ${fault}`, [...(found.get(`at the stove: ${fault}`) || []), `${width} px`]);
    const page = await browser.newPage();
    await page.addInitScript(() => {
      const now = Date.now;
      let ahead = 0;
      Date.now = () => now() + ahead;
      window.pass = (seconds) => { ahead += 1000 * seconds; };
    });
    await page.setViewportSize({ width, height: 800 });
    const open = (name) => page.goto(pathToFileURL(path.join(site, name)).href);
    await open("lessons/spirit-by-ratio.html");
    const all = await page.locator(".work > li").evaluateAll((items) => items.map(({ dataset: { minutes } }, n) => [n, Number(minutes) || 0]));
    const offered = await page.locator(".work > li").evaluateAll((items) => items.map((item) => Boolean(item.querySelector(".timer"))));
    for (const [n, minutes] of all) if (offered[n] !== (minutes > 0 && minutes <= 1440)) tell(`a step of ${minutes} minutes has a timer: ${offered[n]}`);

    await open("lessons/twice-boiled.html");
    const title = await page.title();
    const says = await page.locator(".stove").first().evaluate((at) => ({ ...at.dataset }));
    // Forward or back by the Tab key until what has the focus is what is sought.
    const reach = async (what, key = "Tab") => {
      for (let n = 0; n < 120; n += 1) {
        if (await page.evaluate((sought) => document.activeElement === document.querySelector(sought), what)) return;
        await page.keyboard.press(key);
      }
      tell(`${what} is not reached by ${key}`);
    };
    const step = (n, what) => `.work > li:nth-child(${n}) ${what}`;
    const text = (what) => page.locator(what).first().textContent();
    const is = async (what, wanted) => {
      await page.waitForFunction(([at, words]) => document.querySelector(at).textContent === words, [what, wanted], { timeout: 3000 })
        .catch(async () => tell(`${what} says ${await text(what)}, not ${wanted}`));
    };
    const size = () => page.locator(step(1, ".do")).first().evaluate((at) => parseFloat(getComputedStyle(at).fontSize));
    const wide = async (when) => {
      if (await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth)) tell(`scrolls sideways ${when}`);
    };

    const small = await size();
    await reach(".stove [value=large]");
    await page.keyboard.press("Space");
    if (await page.getAttribute(".stove [value=large]", "aria-pressed") !== "true" || Math.abs(await size() / small - 1.5) > 0.11) tell(`large type is ${await size()} px, the other ${small}`);
    await wide("in large type");
    await page.keyboard.press("Space");
    if (await size() !== small) tell("large type stays");

    await reach(step(1, "input"));
    await page.keyboard.press("Space");
    const named = await page.locator(step(1, "label")).first().textContent();
    if (named.trim() !== says.done.replace("{number}", 1)) tell(`a tick is called ${named}`);
    if (!await page.locator(step(1, ".do")).first().evaluate((at) => getComputedStyle(at).textDecorationLine.includes("line-through"))) tell("a step that is done is not struck");

    // Two timers at once; the first is stopped and goes on, the second runs out with it.
    const [one, two] = [step(1, "[role=timer]"), step(2, "[role=timer]")];
    const go = (n) => step(n, ".timer button");
    // What a step has, from its own figure: a timer never rings before.
    const [first, second] = await page.locator(".work > li").evaluateAll((items) => items.slice(0, 2).map((item) => `${Number(item.dataset.minutes)}:00`));
    if (second !== "10:00") tell(`the second step has ${second}`);
    await is(one, first);
    await is(two, second);
    for (const n of [1, 2]) {
      await reach(go(n));
      await page.keyboard.press("Enter");
      await is(go(n), says.stop);
    }
    await page.evaluate(() => window.pass(65));
    await page.waitForFunction((at) => /^8:5[345]$/.test(document.querySelector(at).textContent), two, { timeout: 3000 })
      .catch(async () => tell(`10 minutes less 65 seconds are ${await text(two)}`));
    await reach(go(1), "Shift+Tab");
    await page.keyboard.press("Enter");
    await is(go(1), says.start);
    const left = await text(one);
    await page.evaluate(() => window.pass(9 * 60));
    await is(two, says.over);
    const up = says.up.replace("{number}", 2);
    await is(".times-up", up);
    if (await page.title() !== `${up} ${title}`) tell(`the title is ${await page.title()}`);
    if (await text(one) !== left) tell("a timer that was stopped goes on");
    await page.keyboard.press("Enter");
    await is(go(1), says.stop);
    if (await text(one) === first) tell("a timer that goes on begins anew");
    await page.evaluate(() => window.pass(40 * 60));
    await is(one, says.over);
    // Step 1 is ticked: nobody waits for it.
    await is(".times-up", up);
    await wide("when time is up");
    await reach(step(2, "input"));
    await page.keyboard.press("Space");
    await is(".times-up", "");
    await page.keyboard.press("Space");
    await is(".times-up", up);
    await reach(step(2, ".timer button:last-child"));
    await page.keyboard.press("Enter");
    await is(two, second);
    await is(".times-up", "");
    if (await page.title() !== title) tell(`the title stays ${await page.title()}`);

    await reach(go(2), "Shift+Tab");
    await page.keyboard.press("Enter");
    await reach(".stove [value=anew]", "Shift+Tab");
    await page.keyboard.press("Enter");
    await is(one, first);
    await is(two, second);
    await is(go(2), says.start);
    if (await page.locator(".at-step input:checked").count()) tell("a tick stays when all is begun again");

    // What is pressed is kept nowhere, and not printed.
    await page.locator(step(1, "input")).first().check();
    await page.reload();
    if (await page.locator(".at-step input:checked").count()) tell("a tick outlives the page");
    await page.locator(step(1, "input")).first().check();
    await page.emulateMedia({ media: "print" });
    if (await page.locator(".stove:visible, .at-step:visible, .times-up:visible").count()) tell("it is printed");
    if (await page.locator(step(1, ".do")).first().evaluate((at) => getComputedStyle(at).textDecorationLine !== "none")) tell("a printed step is struck");
    await page.emulateMedia({ media: "screen" });
    await open("booklet.html");
    if (await page.locator(".stove, .at-step").count()) tell("it is in the booklet");
    await page.close();
  }
};
