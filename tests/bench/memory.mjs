/** Most memory that the processes of the open pages have taken so far, MB; null where the system doesn't tell (not Linux). */
import { readFileSync } from "node:fs";

/** @param {import("@playwright/test").Browser} browser */
export async function mostMemory(browser) {
  const session = await browser.newBrowserCDPSession();
  try {
    const { processInfo } = await session.send("SystemInfo.getProcessInfo");
    const peaks = processInfo
      .filter(({ type }) => type === "renderer")
      .map(({ id }) => Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${id}/status`, "utf8"))?.[1]));
    return Math.max(...peaks) / 1024;
  } catch {
    return null;
  } finally {
    await session.detach();
  }
}
