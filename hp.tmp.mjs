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
let hc; if (process.env.HEAP) { hc = await page.context().newCDPSession(page); const o=page.evaluate.bind(page); page.evaluate = async (f,...a)=>{ if(String(f).includes("rod has no handle")) { await hc.send("HeapProfiler.startSampling",{samplingInterval:16384,includeObjectsCollectedByMajorGC:true,includeObjectsCollectedByMinorGC:true}); const u=await hc.send("Runtime.getHeapUsage"); console.log(u.usedSize/1e6, u.backingStorageSize/1e6);} return o(f,...a); }; }
const r = await fd.timeFloorDrag(page, server.address, benchProject(Number(process.argv[2]||200)));
if (client) writeFileSync(process.env.PROF, JSON.stringify((await client.send("Profiler.stop")).profile));
if (hc) { const {profile}=await hc.send("HeapProfiler.stopSampling"); const u=await hc.send("Runtime.getHeapUsage"); console.log(u.usedSize/1e6, u.backingStorageSize/1e6);
 const self=new Map(); const incl=new Map(); const walk=(n,names)=>{ const k=n.callFrame.functionName+":"+n.callFrame.lineNumber; self.set(k,(self.get(k)||0)+n.selfSize); const add=!names.has(k); const nn=new Set(names); nn.add(k); let t=n.selfSize; for(const c of n.children) t+=walk(c,nn); if(add) incl.set(k,(incl.get(k)||0)+t); return t; }; const total=walk(profile.head,new Set()); console.log("total MB",total/1e6);
 for (const [m,name] of [[self,"self"],[incl,"incl"]]) { console.log("--",name); for (const [k,v] of [...m].sort((a,b)=>b[1]-a[1]).slice(0,40)) console.log((v/1e6).toFixed(1),k); } }
const f = (a) => { const s=[...a].sort((x,y)=>x-y); return `med ${s[s.length>>1].toFixed(1)} p95 ${s[Math.floor(.95*s.length)].toFixed(1)}`; };
for (const [k,v] of Object.entries(r)) if (Array.isArray(v)) console.log(k, f(v), v.slice(0,60).map((x)=>x.toFixed(0)).join(" "));
await browser.close(); await server.close(); process.exit(0);
