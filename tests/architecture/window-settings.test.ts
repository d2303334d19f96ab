import { describe, expect, it } from "vitest";
import { placeWindow } from "../../electron/windowPlace";
import { windowSettings } from "../../electron/windowSettings";
import { contentSecurityPolicy } from "../../src/start/policy.mjs";

const place = placeWindow(null, [{ x: 0, y: 0, width: 1920, height: 1080 }]);

describe("the window's settings", () => {
  it("keep the page from Node and the system", () => {
    expect(windowSettings(place, "/preload.cjs", false, "/icon.png").webPreferences).toEqual({
      preload: "/preload.cjs",
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
    });
  });

  it("show nothing before the page is drawn, on the theme's own paper", () => {
    const light = windowSettings(place, "", false, "/icon.png");
    expect(light).toMatchObject({ show: false, backgroundColor: "#f6f2e8", icon: "/icon.png" });
    expect(windowSettings(place, "", true, "").backgroundColor).toBe("#1b2124");
  });
});

describe("the page's policy", () => {
  const rules = new Map(
    contentSecurityPolicy.split("; ").map((rule) => rule.split(/ (.*)/, 2) as [string, string]),
  );

  it("lets scripts, styles and connections come from the page's own files alone", () => {
    for (const kind of ["default-src", "script-src", "connect-src", "worker-src", "font-src"]) {
      expect(rules.get(kind)).toBe("'self'");
    }
    expect(rules.get("object-src")).toBe("'none'");
    expect(rules.get("base-uri")).toBe("'none'");
    expect(rules.get("form-action")).toBe("'none'");
  });

  it("allows nothing unsafe and no other place", () => {
    expect(contentSecurityPolicy).not.toMatch(/unsafe|https?:|\*/);
  });
});
