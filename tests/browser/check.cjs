// Opens every page of a pressed site in Chromium, light and dark, narrow to wide, from file:, and tells
// what is wrong: axe violations, sideways scroll, small targets, errors of the console, mathematics that is not laid
// out; then uses what the script offers, prints, and reads the site from a host and without one.
// Usage: node check.cjs SITE TOOLS, where TOOLS/node_modules holds playwright-core and axe-core.
"use strict";
const fs = require("node:fs");
const http = require("node:http");
const os = require("node:os");
const path = require("node:path");
const { pathToFileURL } = require("node:url");

const agreement = require("./agreement.cjs");
const copybook = require("./copybook.cjs");
const slate = require("./slate.cjs");
const steps = require("./steps.cjs");

const [site, tools] = process.argv.slice(2).map((dir) => path.resolve(dir));
const modules = path.join(tools, "node_modules");
const { chromium } = require(path.join(modules, "playwright-core"));
const axe = fs.readFileSync(path.join(modules, "axe-core", "axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const WIDTHS = [320, 768, 1280];
const QUIET = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

// Every page but what is shown where nothing stands, which is looked at on a host, and what only leads on.
function pages(folder) {
  const leadsOn = (file) => /http-equiv="?refresh/.test(fs.readFileSync(file, "utf8"));
  return htmlFiles(folder).filter((file) => path.basename(file) !== "404.html" && !leadsOn(file));
}

function htmlFiles(folder) {
  return fs.readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const full = path.join(folder, entry.name);
    return entry.isDirectory() ? htmlFiles(full) : full.endsWith(".html") ? [full] : [];
  }).sort();
}

// Runs in the page: what does not hold there.
function look() {
  const faults = [];
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth) {
    const wide = [...document.body.querySelectorAll("*")].filter((at) => at.getBoundingClientRect().right > root.clientWidth + 0.5);
    const first = wide.slice(0, 3).map((at) => at.cloneNode().outerHTML.slice(0, 100)).join(" ");
    faults.push(`scrolls sideways: ${root.scrollWidth} px in ${root.clientWidth}: ${first}`);
  }
  if (![...document.querySelectorAll("link[rel=stylesheet]")].every((link) => link.sheet)) faults.push("the style is not loaded");
  // What one touches is 44 px high, but for links in running text (WCAG 2.2, 2.5.5, has the same exception) and, where a
  // pointer is fine, the list of parts.
  const LEAST = 44;
  const small = (at) => {
    const { width, height } = at.getBoundingClientRect();
    return width > 0 && height > 0 && (height < LEAST - 0.5 || width < 24);
  };
  
  const fine = matchMedia("(pointer: fine) and (min-width: 70rem)").matches;
  const touched = "button, input:not([disabled]), summary, .running-head a, .turnings a, .index-run a, .bill a, .found a, .bound-contents a"
    + (fine ? "" : ", .argument a");
  for (const at of document.querySelectorAll(touched)) {
    if (small(at) && !at.closest("table.fold-out thead")) faults.push(`smaller than ${LEAST} px: ${at.outerHTML.slice(0, 120)}`);
  }
  for (const math of document.querySelectorAll("math")) {
    const box = math.getBoundingClientRect();
    if (!(box.width > 0 && box.height > 0)) faults.push(`mathematics without size: ${math.outerHTML.slice(0, 100)}`);
    for (const over of math.querySelectorAll("mfrac")) {
      const line = parseFloat(getComputedStyle(over).fontSize);
      if (over.getBoundingClientRect().height < 1.5 * line) faults.push(`a fraction on one line: ${math.outerHTML.slice(0, 100)}`);
    }
  }
  return faults;
}

// Opens each file in a page of its own, in every look, and notes what is found. Gives the number of looks.
async function walk(browser, files, found) {
  const page = await browser.newPage();
  let at = "";
  let looked = 0;
  const tell = (fault) => found.set(fault, [...(found.get(fault) || []), at]);
  page.on("console", (message) => ["error", "warning"].includes(message.type()) && tell(`console: ${message.text()}`));
  page.on("pageerror", (error) => tell(`script: ${error.message}`));
  page.on("requestfailed", (request) => tell(`not loaded: ${request.url()}`));
  page.on("request", (request) => request.url().startsWith("file:") || request.url().startsWith("data:") || tell(`asks for ${request.url()}`));
  for (const file of files) {
    for (const colorScheme of ["light", "dark"]) {
      for (const width of WIDTHS) {
        // What is made of other pages is looked at once light and narrow, once dark and wide.
        if (/^(handouts|cards|labels|booklet|workings|exercises|answers)/.test(path.relative(site, file)) && (colorScheme === "light") !== (width === WIDTHS[0])) continue;
        if (/^booklet/.test(path.relative(site, file)) && width === WIDTHS[1]) continue;
        at = `${path.relative(site, file)}, ${colorScheme}, ${width} px`;
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        await page.goto(pathToFileURL(file).href);
        // First as it opens, then with everything folded out.
        (await page.evaluate(look)).filter((fault) => !fault.startsWith("mathematics") && !fault.startsWith("a fraction")).forEach(tell);
        await page.evaluate(() => document.querySelectorAll("details").forEach((fold) => { fold.open = true; }));
        (await page.evaluate(look)).forEach(tell);
        await page.evaluate(axe);
        const { violations } = await page.evaluate((values) => window.axe.run(document, { runOnly: { type: "tag", values }, preload: false }), TAGS);
        for (const { id, help, nodes } of violations) {
          tell(`axe: ${id}: ${help}: ${nodes.length} times, first ${nodes[0].html.slice(0, 160)} (${nodes[0].failureSummary.replace(/\s+/g, " ").slice(0, 240)})`);
        }
        looked += 1;
      }
    }
  }
  return looked;
}

// What the page's script does, tried on every page that has something to choose or to put in order: which
// measures show, that the choice is kept for the next page, and that each order of a table is one.
async function used(browser, files, found) {
  const page = await browser.newPage();
  await page.setViewportSize({ width: 1280, height: 900 });
  let uses = 0;
  for (const file of files) {
    const tell = (fault) => found.set(`script: ${fault}`, [...(found.get(`script: ${fault}`) || []), path.relative(site, file)]);
    await page.goto(pathToFileURL(file).href);
    const shown = (what) => page.locator(what).evaluateAll((all) => all.filter((at) => at.getClientRects().length).length);
    if (await page.locator(".choice").count()) {
      for (const [choice, hidden, seen] of [["metric", ".us, .and", ".metric"], ["us", ".metric, .and", ".us"], ["both", "[hidden]", ".us"]]) {
        await page.locator(`.choice button[value=${choice}]`).first().click();
        await page.reload();
        if (await shown(hidden)) tell(`${choice} is chosen and the other measures show`);
        if (!await shown(seen)) tell(`${choice} is chosen and its measures do not show`);
        if (await page.locator(".choice button[aria-pressed=true]").first().getAttribute("value") !== choice) tell(`${choice} is not kept`);
        uses += 1;
      }
    }
    for (const table of await page.locator("table.fold-out").all()) {
      const names = () => table.locator("tbody th").evaluateAll((all) => all.map((at) => at.textContent));
      const book = await names();
      for (const head of await table.locator("thead th").all()) {
        const ways = [];
        for (const way of ["ascending", "descending", null]) {
          await head.locator("button").click();
          if (await head.getAttribute("aria-sort") !== way) tell("a column does not say its order");
          const sums = await table.evaluate((at) => !at.matches(".cost") || at.tBodies[0].lastElementChild.matches(".base"));
          if (!sums) tell("a sum left its place");
          ways.push(await names());
        }
        if (ways[2].join() !== book.join()) tell("a table does not come back to the book's order");
        if (ways.some((rows) => [...rows].sort().join() !== [...book].sort().join())) tell("a table lost a row");
        uses += 1;
      }
    }
  }
  await page.close();
  return uses;
}

// One table by hand: the finished volumes of the first lesson's variations rise when that column is put in order.
async function inOrder(browser, found) {
  const page = await browser.newPage();
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.goto(pathToFileURL(path.join(site, "lessons", "rose-hip-and-hibiscus-syrup.html")).href);
  const table = page.locator("table.fold-out").last();
  for (const [head, read] of [["Made, mL", (text) => parseFloat(text.replace(/[^0-9.]/g, ""))], ["Ready in", (text) => {
    const [, hours = "0"] = /(\d+)\s*h/.exec(text) || [];
    const [, minutes = "0"] = /(\d+)\s*min/.exec(text) || [];
    return 60 * hours + Number(minutes);
  }]]) {
    await table.locator("thead button", { hasText: head }).click();
    const cells = await table.locator(`td[data-head="${head}"]`).allTextContents();
    const values = cells.map(read);
    if (!(values.length > 3) || values.some((value, n) => n > 0 && value < values[n - 1])) {
      found.set(`script: ${head} is not in order: ${cells.join(" ")}`, ["the first lesson"]);
    }
  }
  await page.close();
}

// Look up by the keyboard alone, on a phone, from the disk: Latin, marks over letters, the beginnings of words, the
// arrow keys, what is not there, and what stands in the address.
async function lookedUp(browser, found) {
  const page = await browser.newPage();
  await page.setViewportSize({ width: 320, height: 640 });
  const place = pathToFileURL(path.join(site, "look-up.html")).href;
  const tell = (fault) => found.set(`look up: ${fault}`, ["look-up.html"]);
  await page.goto(place);
  const box = page.locator("#sought");
  const names = () => page.locator("#found a").evaluateAll((all) => all.map((at) => at.firstChild.textContent));
  for (const [typed, wanted] of [
    ["rosa can", "Rose hips"], ["Thymus", "Thyme"], ["dècoct", "Decoction"], ["hibis", "Hibiscus calyces"],
    ["garrow", "Rose hip and hibiscus syrup"], ["altit", "Boiling by altitude"],
  ]) {
    await box.focus();
    await page.keyboard.press("Control+A");
    await page.keyboard.type(typed);
    if (!(await names()).includes(wanted)) tell(`${typed} does not find ${wanted}, but ${(await names()).slice(0, 5).join(", ")}`);
    if (await page.locator(".letter:visible").count()) tell("the list by letters stands under what was found");
    if (await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth)) tell(`scrolls sideways for ${typed}`);
  }
  await page.keyboard.press("Control+A");
  await page.keyboard.type("thyme sy");
  const first = (await names())[0];
  if (first !== "Thyme syrup") tell(`thyme sy finds ${first} first`);
  await page.keyboard.press("ArrowDown");
  const focused = () => page.evaluate(() => document.activeElement.firstChild?.textContent ?? document.activeElement.id);
  if (await focused() !== "Thyme syrup") tell(`the arrow leads to ${await focused()}`);
  await page.keyboard.press("ArrowUp");
  if (await focused() !== "sought") tell(`the arrow back leads to ${await focused()}`);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Enter");
  await page.waitForURL(/lessons\/thyme-syrup\.html/, { timeout: 5000 }).catch(() => tell("Enter does not open what was found"));
  await page.goto(`${place}#?xyzzy`);
  await page.reload();
  const said = await page.locator("#found-count").textContent();
  if (!said.startsWith("Not in this book")) tell(`nothing found is told as ${said}`);
  await page.locator("#sought").focus();
  await page.keyboard.press("Escape");
  if (!await page.locator(".letter").first().isVisible()) tell("Escape does not bring the letters back");
  await page.close();
}

// Every page at the width of three papers: nothing is cut at the side; and the sheets of every lesson printed: a
// handout takes two sides at most.
const PAPERS = { A4: 210 - 34, Letter: 216 - 34, A5: 148 - 34 };
async function printed(browser, files, found) {
  const page = await browser.newPage();
  await page.emulateMedia({ media: "print" });
  for (const file of files) {
    const name = path.relative(site, file);
    const tell = (fault) => found.set(`print: ${fault}`, [...(found.get(`print: ${fault}`) || []), name]);
    await page.goto(pathToFileURL(file).href);
    for (const [paper, width] of Object.entries(PAPERS)) {
      if (paper === "A5" && name.startsWith("labels")) continue;
      await page.setViewportSize({ width: Math.floor(width * 96 / 25.4), height: 900 });
      const cut = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (cut > 1) tell(`${cut} px are cut on ${paper}`);
    }
    // Rows, steps, cautions, cards and labels are not split between sheets; a table's head comes again on each.
    const split = await page.evaluate(() => [...document.querySelectorAll("tbody tr, .work li, .caution, .card, .jar, .label")]
      .filter((at) => getComputedStyle(at).breakInside !== "avoid").map((at) => at.className || at.tagName).slice(0, 3));
    if (split.length) tell(`may be split: ${split}`);
    const heads = await page.evaluate(() => [...document.querySelectorAll("thead")]
      .filter((at) => !["table-header-group", "none"].includes(getComputedStyle(at).display)).length);
    if (heads) tell(`${heads} heads of tables do not come again`);
    if (name.startsWith("handouts")) {
      // Loaded anew: a page laid out for a narrow sheet is printed as one.
      await page.setViewportSize({ width: 1280, height: 900 });
      await page.goto(pathToFileURL(file).href);
      for (const format of ["A4", "Letter"]) {
        const sides = ((await page.pdf({ format })).toString("latin1").match(/\/Type\s*\/Page\b/g) || []).length;
        if (sides < 1 || sides > 2) tell(`${sides} sides of ${format}`);
      }
    }
  }
  await page.close();
}

// The site on a host, below its root: read once, it is there without a connection; what is not there is told in the
// book's own dress; no page leaves a cookie.
async function hosted(browser, found) {
  const tell = (fault) => found.set(`on a host: ${fault}`, ["the site"]);
  const TYPES = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml", ".png": "image/png", ".xml": "application/xml" };
  const server = http.createServer((request, response) => {
    const asked = decodeURIComponent(new URL(request.url, "http://x").pathname).replace(/^\/stillroom\//, "");
    const full = path.join(site, asked === "" || asked.endsWith("/") ? `${asked}index.html` : asked);
    const there = full.startsWith(site) && fs.existsSync(full) && fs.statSync(full).isFile();
    const file = there ? full : path.join(site, "404.html");
    response.writeHead(there ? 200 : 404, { "content-type": TYPES[path.extname(file)] || "text/plain" });
    fs.createReadStream(file).pipe(response);
  });
  await new Promise((ready) => { server.listen(0, "127.0.0.1", ready); });
  const root = `http://localhost:${server.address().port}/stillroom/`;
  const page = await browser.newPage();
  page.on("console", (message) => message.type() === "error" && !message.text().includes("404") && tell(`console: ${message.text()}`));
  page.on("request", (request) => request.url().startsWith(root) || tell(`asks for ${request.url()}`));
  const missing = await page.goto(`${root}nowhere/at/all.html`);
  if (missing.status() !== 404 || await page.evaluate(() => getComputedStyle(document.querySelector(".leaf")).maxWidth) === "none") tell("what is not there has no dress");
  await page.goto(root);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await page.waitForFunction(() => navigator.serviceWorker.controller, null, { timeout: 60000 }).catch(() => tell("the book is not kept"));
  if ((await page.context().cookies()).length) tell("a cookie was left");
  await new Promise((closed) => { server.closeAllConnections(); server.close(closed); });
  for (const [place, title] of [["lessons/thyme-syrup.html", "Thyme syrup"], ["", "Hip, Herb and Haw"], ["look-up.html#?marc", "Look up"], ["booklet.html", "Hip, Herb and Haw"]]) {
    await page.goto(`${root}${place}`).catch(() => {});
    const heading = await page.locator("h1").first().textContent({ timeout: 3000 }).catch(() => "nothing");
    if (heading !== title) tell(`without a connection ${place || "the contents"} is ${heading}`);
  }
  await page.close();
}

async function main() {
  const home = fs.mkdtempSync(path.join(os.tmpdir(), "stillroom-browser-"));
  const options = { executablePath: process.env.CHROMIUM || "/usr/bin/chromium", args: QUIET, viewport: null };
  const browser = await chromium.launchPersistentContext(home, options);
  const found = new Map();
  let looked = 0;
  let uses = 0;
  let agreed = 0;
  try {
    uses = await used(browser, pages(site), found);
    await inOrder(browser, found);
    await lookedUp(browser, found);
    await steps(browser, site, found);
    await slate(browser, site, found);
    await copybook(browser, site, found);
    agreed = await agreement(browser, site, found);
    await hosted(browser, found);
    await printed(browser, pages(site), found);
    // Two pages side by side, since most of the time goes into axe.
    const files = pages(site);
    const halves = [0, 1].map((half) => walk(browser, files.filter((_, n) => n % 2 === half), found));
    looked = (await Promise.all(halves)).reduce((sum, views) => sum + views, 0);
  } finally {
    await browser.close();
    fs.rmSync(home, { recursive: true, force: true });
  }
  for (const [fault, places] of found) console.log(`${fault}\n    ${places.length} times: ${places.slice(0, 6).join("; ")}`);
  console.log(`${uses} uses of the script; ${agreed} settings as the program shows them; ${looked} views of ${pages(site).length} pages: ${found.size ? `${found.size} faults` : "no fault"}`);
  process.exitCode = found.size || !looked || !uses ? 1 : 0;
}

main().catch((error) => { console.error(error); process.exitCode = 2; });
