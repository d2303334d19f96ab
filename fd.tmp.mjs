import { chromium } from "@playwright/test";
import { chromiumArguments, ensureChromium } from "./e2e/support/chromium.mjs";
import { buildIfStale } from "./src/start/build.mjs";
import { servePage } from "./src/start/serve.mjs";
import * as fd from "./tests/bench/floor-drag.mjs";
import { benchProject } from "./tests/bench/projects.mjs";
import { writeFileSync } from "node:fs";
buildIfStale();
const server = await servePage();
const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArguments });
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
let client;
if (process.env.PROF) { client = await page.context().newCDPSession(page); await client.send("Profiler.enable"); await client.send("Profiler.setSamplingInterval",{interval:200}); await client.send("Profiler.start"); }
const r = await fd.timeFloorDrag(page, server.address, benchProject(Number(process.argv[2]||200)));
if (client) writeFileSync(process.env.PROF, JSON.stringify((await client.send("Profiler.stop")).profile));
const f = (a) => { const s=[...a].sort((x,y)=>x-y); return `med ${s[s.length>>1].toFixed(1)} p95 ${s[Math.floor(.95*s.length)].toFixed(1)}`; };
for (const [k,v] of Object.entries(r)) if (Array.isArray(v)) console.log(k, f(v), v.slice(0,60).map((x)=>x.toFixed(0)).join(" "));
await browser.close(); await server.close(); process.exit(0);
