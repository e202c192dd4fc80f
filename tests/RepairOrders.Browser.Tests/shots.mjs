// Pictures of every page and of every panel of a running demo, wide and narrow, light and dark. No part of the test run:
//   deploy/run.sh                                  (with its demo, in another terminal)
//   node tests/RepairOrders.Browser.Tests/shots.mjs http://127.0.0.1:5210 data/sign-ins.txt out/shots [only]
// "only" is a word that the picture's name must hold. The browser's driver is the one that the tests' build leaves behind.
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const [address, signIns, folder, only = ""] = process.argv.slice(2);
const here = dirname(fileURLToPath(import.meta.url));
const { chromium } = createRequire(import.meta.url)(join(here, "bin/Debug/net10.0/linux-x64/.playwright/package"));
const passwords = Object.fromEntries(
  readFileSync(signIns, "utf8").split("\n").map((l) => l.trim().split(/\s+/)).filter((w) => w.length > 2).map((w) => [w[0], w[1]]),
);

const pages = {
  mara: ["/", "/register", "/register?search=nothing-is-called-this", "/lines", "/shutdowns", "/me", "/raise", "/there-is-no-such-page"],
  tove: ["/", "/raise"],
  signe: ["/", "/stock", "/stock/batches", "/stock/receive", "/stock/items", "/stock/items/add", "/stock/bins", "/stock/bins/A1", "/stock/instruments", "/stock/instruments/add"],
  ines: ["/", "/emergency-list", "/emergency-list/add"],
  henrik: ["/"],
  ada: ["/", "/lines/add", "/lines/import", "/sites", "/sites/mill/change", "/sites/add", "/people", "/people/add", "/people/tove"],
  rune: ["/", "/lines/add"],
  olaf: ["/"],
};

mkdirSync(folder, { recursive: true });
// The service limits how often one address may ask; then it is asked again a little later.
async function ask(path, options) {
  for (;;) {
    const answer = await fetch(`${address}/api/v1/${path}`, options);
    if (answer.status !== 429) return answer.json();
    await new Promise((done) => setTimeout(done, 5000));
  }
}
const api = (token, path) => ask(path, { headers: { Authorization: `Bearer ${token}` } });
const tokens = {};
for (const name of Object.keys(passwords))
  tokens[name] = (
    await ask("session", {
      method: "POST",
      headers: { "Content-Type": "application/json", "Idempotency-Key": crypto.randomUUID() },
      body: JSON.stringify({ name, password: passwords[name] }),
    })
  ).token;

// One order for each action that somebody may do now, and one for each stage.
const panels = new Map();
const orders = [];
for (let next = ""; next !== undefined; ) {
  const page = await api(tokens.mara, `orders?limit=200${next ? `&after=${encodeURIComponent(next)}` : ""}`);
  orders.push(...page.rows.map((r) => r.number));
  next = page.next ?? undefined;
}
for (const number of orders)
  for (const name of Object.keys(tokens).filter((n) => !["ada", "rune"].includes(n))) {
    const sheet = await api(tokens[name], `orders/${number}`);
    for (const action of sheet.actions.filter((a) => !a.objection))
      if (!panels.has(action.action)) panels.set(action.action, { name, number });
    if (!panels.has(`stage ${sheet.title.stage}`)) panels.set(`stage ${sheet.title.stage}`, { name: "rune", number });
  }

const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
for (const [width, ink] of [[1440, "light"], [390, "light"], [1440, "dark"], [390, "dark"]])
  for (const name of Object.keys(passwords)) {
    const mine = [...panels].filter(([, p]) => p.name === name);
    const wanted = [
      ...(pages[name] ?? []).map((path) => ({ path, file: `${name}${path.replace(/[^a-z0-9]+/gi, "-")}` })),
      ...mine.map(([action, { number }]) => ({ path: `/orders/${number}`, action, file: `panel-${action.replace(/ /g, "-")}` })),
    ].filter((w) => w.file.includes(only));
    if (wanted.length === 0) continue;
    const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme: ink, locale: "en-GB" });
    const page = await context.newPage();
    await page.goto(`${address}/sign-in?to=/me`);
    if (name === "mara" && "sign-in".includes(only)) await page.screenshot({ path: join(folder, `sign-in-${width}-${ink}.png`) });
    await page.fill("#name", name);
    await page.fill("#password", passwords[name]);
    await page.click("button[type=submit]");
    await page.locator("main h1").waitFor();
    for (const { path, action, file } of wanted) {
      await page.goto(address + path);
      await page.locator("main[data-live]").waitFor();
      await page.getByText("Reading …").waitFor({ state: "detached" }).catch(() => {});
      if (action && !action.startsWith("stage ")) {
        const button = page.locator(`button[data-action='${action}']`);
        if (await button.count()) await button.first().click();
      }
      await page.waitForTimeout(600);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (over > 0) console.log(`${file} ${width}: ${over} px over the edge`);
      const place = action && !action.startsWith("stage ") ? page.locator("#do") : page;
      await place.screenshot({ path: join(folder, `${file}-${width}-${ink}.png`), fullPage: true });
    }
    await context.close();
  }
await browser.close();
