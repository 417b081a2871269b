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
  // A shared machine may stall for seconds: on one, a test that fails is tried once more and named as flaky.
  retries: process.env.CI ? 1 : 0,
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: [["list"]],
  use: { ...phone, launchOptions: launch, trace: process.env.WEB_TRACE ? "on" : "retain-on-failure" },
  projects: [{ name: "phone" }],
});
