/** The built page in a browser: it keeps to its own policy and its own address. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { repository } from "../src/start/repository.mjs";
import { expect, test } from "./support/fixtures";

const ending = ".drysill.json";
const demos = readdirSync(join(repository, "demo-projects"))
  .filter((name) => name.endsWith(ending))
  .map((name) => name.slice(0, -ending.length));

for (const demo of [undefined, ...demos]) {
  test(`opens ${demo ?? "the start screen"} without a complaint and without a look outside`, async ({
    page,
    openPage,
    baseURL,
  }) => {
    const complaints: string[] = [];
    const outside: string[] = [];
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) complaints.push(message.text());
    });
    page.on("pageerror", (error) => complaints.push(error.message));
    page.on("request", (request) => {
      const own = [`${baseURL}/`, "blob:", "data:"].some((start) => request.url().startsWith(start));
      if (!own) outside.push(request.url());
    });
    await openPage(page, { demo });
    await expect(page.locator("#root > *").first()).toBeVisible();
    await page.waitForLoadState("networkidle");
    // Pressing a button makes react-aria add its one style element, which the policy names by its hash.
    await page.getByRole("button").first().click();
    await page.waitForTimeout(300);
    expect(complaints).toEqual([]);
    expect(outside).toEqual([]);
  });
}
