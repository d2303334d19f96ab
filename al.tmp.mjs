import { chromium } from "@playwright/test";
import { chromiumArguments, ensureChromium } from "./e2e/support/chromium.mjs";
import { servePage } from "./src/start/serve.mjs";
import * as fd from "./tests/bench/floor-drag.mjs";
import { benchProject } from "./tests/bench/projects.mjs";
const server = await servePage();
const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArguments });
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
await page.addInitScript(() => {
  Error.stackTraceLimit = 9;
  const by = new Map(); window.__alloc = by;
  for (const name of ["Float64Array","Float32Array","Uint8Array","Uint32Array","Int32Array","Uint8ClampedArray","Uint16Array"]) {
    const Old = window[name];
    window[name] = new Proxy(Old, { construct(t, args, nt) { const o = Reflect.construct(t, args, nt===window[name]?t:nt);
      if (!(args[0] instanceof ArrayBuffer) && o.byteLength > 4000) { const k = new Error().stack.split("\n").slice(2,7).map(s=>s.trim().replace(/\(?http.*js:/,"")).join(" < "); by.set(k,(by.get(k)||0)+o.byteLength); }
      return o; } });
  }
});
const orig = page.evaluate.bind(page);
let n=0;
const r = await (async () => {
  // open once, then clear, then drag
  const t = fd.timeFloorDrag;
  page.evaluate = async (f, ...a) => { if (String(f).includes("rod has no handle")) await orig(() => window.__alloc.clear()); return orig(f, ...a); };
  return t(page, server.address, benchProject(Number(process.argv[2]||10000)));
})();
const out = await orig(() => [...window.__alloc].sort((a,b)=>b[1]-a[1]).slice(0,25));
for (const [k,v] of out) console.log((v/1e6).toFixed(1),"MB",k);
await browser.close(); await server.close(); process.exit(0);
