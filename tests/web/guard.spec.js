// The guard is what makes "no request to another origin, ever" a test: so it is itself shown to catch one.
import { expect, test } from "./fixtures.js";

const ELSEWHERE = "http://127.0.0.1:9/";

test("the guard notices a page that reaches for another origin", async ({ page, guard }) => {
  await page.goto(ELSEWHERE).catch(() => {});
  expect(guard.take()).toContain(`request: ${ELSEWHERE}`);
});

test.describe("kept on the phone", () => {
  test.use({ serviceWorkers: "allow" });

  test("the guard notices a service worker that reaches for another origin", async ({ site, install, guard }) => {
    const body = `addEventListener("activate", (event) => event.waitUntil(clients.claim())); fetch("${ELSEWHERE}").catch(() => {});`;
    site.lie("sw.js", { type: "text/javascript", body });
    await install();
    await expect.poll(() => guard.faults).toContain(`request: ${ELSEWHERE}`);
    guard.take();
  });
});

test("the guard notices a page that throws", async ({ page, site, guard }) => {
  await page.goto(site.url);
  await page.evaluate(() => void setTimeout(() => { throw new Error("something broke"); }));
  await expect.poll(() => guard.faults.join()).toContain("page error: something broke");
  guard.take();
});

test("the guard notices a page that logs an error", async ({ page, site, guard }) => {
  await page.goto(site.url);
  await page.evaluate(() => console.error("something broke"));
  await expect.poll(() => guard.faults.join()).toContain("console: something broke");
  guard.take();
});
