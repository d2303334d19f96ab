// node look.tmp.mjs out.png DEMO|new W H light|dark ['js']: page, step(name), type(label,text), shot(path) in scope
import { chromium } from "@playwright/test";
import { chromiumArguments, ensureChromium } from "./e2e/support/chromium.mjs";
import { buildIfStale } from "./src/start/build.mjs";
import { servePage } from "./src/start/serve.mjs";
const [out, demo, w, h, theme, js] = process.argv.slice(2);
buildIfStale();
const executablePath = ensureChromium();
const served = await servePage();
const address = served.address;
const browser = await chromium.launch({ executablePath, args: chromiumArguments });
const page = await browser.newPage({ viewport: { width: +w, height: +h }, colorScheme: theme, deviceScaleFactor: +(process.env.DSF ?? 1) });
page.on("console", (m) => m.type() === "error" && console.log("console:", m.text()));
page.on("pageerror", (e) => console.log("pageerror:", e.message));
await page.goto(`${address}/?theme=${theme}${demo === "new" ? "" : `&demo=${demo}`}`);
await page.waitForTimeout(1500);
const step = async (name) => { await page.getByRole("navigation").getByRole("button", { name: new RegExp(name, "i") }).first().click(); await page.waitForTimeout(400); };
const type = async (label, text) => { const f = page.getByLabel(label).first(); await f.fill(text); await f.press("Enter"); };
const shot = (path) => page.screenshot({ path });
try { if (js) await new Function("page", "step", "type", "shot", `return (async () => { ${js} })()`)(page, step, type, shot); } catch (e) { console.log(String(e).slice(0, 800)); }
await page.waitForTimeout(500);
await page.screenshot({ path: out });
await browser.close();
process.exit(0);
