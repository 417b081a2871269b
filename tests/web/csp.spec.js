// What the page may do is written in the page: no inline script without its hash, no inline style, no other origin.
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { DIST, expect, ready, test } from "./fixtures.js";

const page_ = () => readFile(join(DIST, "index.html"), "utf8");

test("the policy allows nothing unsafe but WebAssembly, and no other origin", async () => {
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(await page_())[1];
  const rules = Object.fromEntries(policy.split(";").map((rule) => rule.trim().split(/\s+(.*)/)));
  expect(rules["default-src"]).toBe("'none'");
  expect(rules["connect-src"]).toBe("'self'");
  expect(rules["style-src"]).toBe("'self'");
  for (const source of rules["script-src"].split(" ")) expect(source).toMatch(/^('self'|'wasm-unsafe-eval'|'sha256-[\w+/=]{44}')$/);
  expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:|\*/);
});

test("the policy comes before anything it governs, and nothing is absolute", async () => {
  const page = await page_();
  expect(page.indexOf("Content-Security-Policy")).toBeLessThan(page.search(/<(script|link)\b/));
  expect(page).not.toMatch(/(href|src)="?(https?:|\/)/);
  expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
});

test("an injected script and an injected style do nothing", async ({ page, site, guard }) => {
  guard.allow(/Content Security Policy/);
  await page.goto(site.url);
  await ready(page);
  const harm = await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.harm = true";
    document.body.append(script);
    const styled = document.createElement("p");
    styled.setAttribute("style", "position: fixed");
    document.body.append(styled);
    return { script: !!window.harm, style: getComputedStyle(styled).position };
  });
  expect(harm).toEqual({ script: false, style: "static" });
});

test("another origin cannot be reached from the page", async ({ page, site, guard }) => {
  guard.allow(/Content Security Policy|Failed to fetch/);
  await page.goto(site.url);
  await ready(page);
  expect(await page.evaluate(() => fetch("http://127.0.0.1:9/").then(() => "reached", () => "refused"))).toBe("refused");
});

test.describe("before the WebAssembly arrives", () => {
  test("the page shows its name and its four places on paper", async ({ page, site, guard }) => {
    guard.allow(/wasm|Failed to fetch|ERR_FAILED/);
    await page.route(/\.wasm$/, (route) => route.abort());
    await page.goto(site.url);
    await expect(page.getByRole("heading", { name: "Bandwright" })).toBeVisible();
    const places = await page.getByRole("navigation").getByRole("link").evaluateAll((links) => links.map((a) => [a.textContent, a.getAttribute("href")]));
    expect(places).toEqual([["Today", "#/today"], ["Couples", "#/couples"], ["Tools", "#/tools"], ["Setup", "#/setup"]]);
  });

  for (const [theme, paper] of [["light", "rgb(248, 244, 234)"], ["dark", "rgb(27, 32, 36)"]])
    test(`the chosen theme holds: ${theme}`, async ({ page, site, guard }) => {
      guard.allow(/wasm|Failed to fetch|ERR_FAILED/);
      await page.emulateMedia({ colorScheme: theme === "light" ? "dark" : "light" });
      await page.route(/\.wasm$/, (route) => route.abort());
      await page.goto(site.url);
      await page.evaluate((theme) => localStorage.setItem("bandwright.theme", JSON.stringify(theme)), theme);
      await page.reload();
      expect(await page.evaluate(() => getComputedStyle(document.querySelector(".frame")).backgroundColor)).toBe(paper);
      const bar = await page.evaluate(() => [...document.querySelectorAll("meta[name=theme-color]")].find((meta) => matchMedia(meta.media).matches).content);
      expect(bar).toBe(theme === "light" ? "#f8f4ea" : "#1b2024");
    });
});
