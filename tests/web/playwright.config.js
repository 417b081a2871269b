import { defineConfig } from "@playwright/test";
import { launch, phone } from "./browser.js";

// Requests made by service workers count too when a test looks for one that leaves this origin.
process.env.PW_EXPERIMENTAL_SERVICE_WORKER_NETWORK_EVENTS = "1";

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.spec.js",
  outputDir: "../../test-results",
  fullyParallel: true,
  workers: Number(process.env.WEB_WORKERS ?? 2),
  repeatEach: Number(process.env.WEB_REPEAT ?? 1),
  forbidOnly: !!process.env.CI,
  // A test that passes only at its second try has failed: the second try is there to be looked at (its trace is kept).
  retries: process.env.CI ? 1 : 0,
  failOnFlakyTests: true,
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["./slowest.js"]],
  use: { ...phone, launchOptions: launch, serviceWorkers: "block", trace: process.env.WEB_TRACE ? "on" : "on-first-retry" },
  projects: [
    { name: "books", testMatch: "**/*.setup.js", repeatEach: 1 },
    { name: "phone", dependencies: ["books"] },
  ],
});
