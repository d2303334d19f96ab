import type { Page } from "@playwright/test";

/** Once all that the last edit changes is worked out and shown. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[data-testid="plan"][data-settled="true"]').waitFor();
}
