// The reader's script in this browser against the program: the settings that the program wrote down, with what it shows of
// each, are worked again here, and every text has to be the same.
"use strict";
const fs = require("node:fs");
const path = require("node:path");

module.exports = async (browser, site, found) => {
  const file = process.env.STILLROOM_AGREEMENT;
  if (!file) return found.set("agreement: STILLROOM_AGREEMENT names no file of settings", ["the demo"]);
  const page = await browser.newPage();
  for (const script of ["formulas.js", "reader.js"]) await page.addScriptTag({ content: fs.readFileSync(path.join(site, script), "utf8") });
  let compared = 0;
  for (const { data, rows } of JSON.parse(fs.readFileSync(file, "utf8"))) {
    const wrong = await page.evaluate(([given, asked]) => {
      const R = stillroomReader;
      const ways = R.open(given);
      return asked.filter(([n, set, wanted]) => {
        const of = R.work(ways[n], new Map(set));
        const cannot = R.impossible(of.way, of.values);
        const told = cannot >= 0 ? [cannot] : [
          cannot,
          of.way.lines.map((line, at) => [R.shown(of, at), R.between(of, at), R.other(of, at), line.kind === "w" ? R.equation(line, (by) => R.shown(of, by)) : ""]),
          R.judge(of).class, R.because(of, R.judge(of)), R.judge(of, false).class,
          R.cautions(of).map(({ id, lead, text }) => [id, lead, text]),
        ];
        return JSON.stringify(told) !== JSON.stringify(wanted);
      }).map(([n, set]) => `${ways[n].name} ${JSON.stringify(set)}`);
    }, [data, rows]);
    for (const setting of wrong.slice(0, 3)) found.set(`agreement: ${setting} is shown otherwise`, ["the demo"]);
    compared += rows.length;
  }
  if (compared < 1000) found.set(`agreement: only ${compared} settings`, ["the demo"]);
  await page.close();
  return compared;
};
