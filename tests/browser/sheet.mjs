// SPDX-License-Identifier: MIT
// The HTML sheet in a real browser: it searches, switches units, prints on A4 and Letter, needs no network, says nothing on the
// console, and what stands in the book stays text, however hostile. Called by sheet.sh with the files and what they hold.
import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { chromium } from "playwright-core";

const [good, hostile, folder] = process.argv.slice(2);
const quiet = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync"];
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: quiet });
const said = [];
const asked = [];

async function open(path, viewport = { width: 1100, height: 800 }) {
  const page = await browser.newPage({ viewport });
  page.on("console", (message) => said.push(message.text()));
  page.on("pageerror", (fault) => said.push(String(fault)));
  page.on("dialog", (dialog) => { said.push("dialog: " + dialog.message()); dialog.dismiss(); });
  page.on("request", (request) => { if (request.url() !== "file://" + path) { asked.push(request.url()); } });
  await page.goto("file://" + path);
  return page;
}
const shown = (page) => page.locator("tbody:visible").count();

{
  const page = await open(good);
  const all = await page.locator("tbody").count();
  assert.equal(all, 116);
  assert.equal(await shown(page), all);
  // Words in any order, of machine, assembly and joint, accents or not.
  await page.fill("#search", "DRAIN  slöpe");
  assert.equal(await shown(page), 4);
  assert.equal(await page.locator("#count").textContent(), "4 of 116 joints");
  assert.equal(await page.locator(".machine:visible").count(), 1);
  assert.deepEqual(new Set(await page.locator("tbody:visible th b").allTextContents()), new Set(["drain plug"]));
  await page.fill("#search", "no such thing");
  assert.equal(await shown(page), 0);
  assert.equal(await page.locator(".assembly:visible").count(), 0);
  await page.fill("#search", "");
  assert.equal(await shown(page), all);
  assert.equal(await page.locator("#count").textContent(), "");
  // The switch.
  const both = async () => [await page.locator("td.nm:visible").count() > 0, await page.locator("td.lbf:visible").count() > 0];
  assert.deepEqual(await both(), [true, true]);
  await page.getByLabel("N·m", { exact: true }).check();
  assert.deepEqual(await both(), [true, false]);
  await page.getByLabel("lbf·ft", { exact: true }).check();
  assert.deepEqual(await both(), [false, true]);
  await page.getByLabel("both units").check();
  assert.deepEqual(await both(), [true, true]);
  // Unchecked figures differ in form and word, not in colour.
  const look = (row) => row.locator(".figure").evaluate((e) => {
    const style = getComputedStyle(e);
    return [style.fontStyle, style.fontWeight, style.borderBottomStyle, style.color].join(" ");
  });
  const sure = page.locator("tr:not(.unchecked):has(.figure)").first();
  const unsure = page.locator("tr.unchecked").first();
  assert.equal(await look(sure), "normal 700 none rgb(17, 17, 17)");
  assert.equal(await look(unsure), "italic 400 dashed rgb(17, 17, 17)");
  assert.match(await unsure.locator(".figure").textContent(), /^\? /);
  assert.equal(await unsure.locator(".word").evaluate((e) => e.innerText), "UNCHECKED");
  // On paper: no search box, all joints, foot included.
  for (const format of ["A4", "Letter"]) {
    writeFileSync(`${folder}/${format}.pdf`, await page.pdf({ format }));
  }
  await page.close();
}

{
  // On a phone nothing runs out at the side.
  const page = await open(good, { width: 360, height: 740 });
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  const figure = page.locator(".figure").first();
  assert.ok(await figure.evaluate((e) => parseFloat(getComputedStyle(e).fontSize) >= 28));
  await page.fill("#search", "drain slope");
  assert.equal(await shown(page), 4);
  await page.close();
}

{
  const page = await open(hostile);
  const name = `<img src=x onerror="document.title='run'"><script>document.title='run'</script>&amp;"'`;
  assert.equal(await page.locator("tbody th b").first().textContent(), name);
  assert.equal(await page.locator("img, iframe, object, main script, main style").count(), 0);
  assert.equal(await page.title(), `</title><script>document.title='run'</script>`);
  // Even markup that got in would not run: the page's own policy forbids it.
  await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "document.title = 'run'";
    document.body.append(script);
    document.body.insertAdjacentHTML("beforeend", "<img src=x onerror=\"document.title = 'run'\">");
  });
  await page.waitForTimeout(200);
  assert.notEqual(await page.title(), "run");
  assert.ok(said.length > 0 && said.every((text) => text.includes("Content Security Policy")), said.join("\n"));
  said.length = 0;
  asked.length = 0;
  await page.close();
}

assert.deepEqual(said, []);
assert.deepEqual(asked, []);
await browser.close();
console.log("the sheet holds in the browser");
