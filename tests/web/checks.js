// What every screen has to pass, as functions that return a list of faults: `expect(await axe(page)).toEqual([])`.
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";

const script = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * Everything axe finds, the enhanced contrast of 7:1 and its advice beyond the guidelines included. It looks from the end
 * of the page, where nothing is said over a control: elsewhere a notice may stand on one that happens to be there.
 */
export async function axe(page) {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(script);
  return page.evaluate(async () => {
    const from = scrollY;
    scrollTo(0, document.documentElement.scrollHeight);
    const tags = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    const { violations } = await axe.run(document, {
      runOnly: { type: "tag", values: tags },
      rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } },
    });
    scrollTo(0, from);
    return violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}: ${node.html}`));
  });
}

/** Every control that people press, and that is less than `least` pixels wide or high. A label counts with its box. */
export async function smallTargets(page, least = 44) {
  return page.evaluate((least) => {
    const controls = "a[href], button, input, select, textarea, summary, [role=button], [role=tab], [role=switch]";
    const faults = [];
    for (const control of document.querySelectorAll(controls)) {
      if (control.type === "hidden" || !control.checkVisibility({ visibilityProperty: true })) continue;
      const boxes = [control, ...(control.labels ?? [])].map((part) => part.getBoundingClientRect());
      const pressed = /^(radio|checkbox|file)$/.test(control.type) ? boxes : boxes.slice(0, 1);
      if (pressed.some(({ width, height }) => width >= least - 0.01 && height >= least - 0.01)) continue;
      const { width, height } = boxes[0];
      faults.push(`${width.toFixed(1)} x ${height.toFixed(1)}: ${control.outerHTML.slice(0, 120)}`);
    }
    return faults;
  }, least);
}

/** Regions in which something may be said later, but that are not drawn until then: what comes is not read out. */
export async function deafRegions(page) {
  return page.evaluate(() => {
    const regions = [...document.querySelectorAll("[aria-live], [role=status], [role=alert], output")];
    const undrawn = regions.filter((it) => getComputedStyle(it).display === "none" && it.parentElement.checkVisibility());
    return undrawn.map((it) => `${it.outerHTML.slice(0, 120)}`);
  });
}

/** How far the page is wider than the screen, in pixels: 0 unless something has to be scrolled to sideways. */
export async function overflow(page) {
  return page.evaluate(() => Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth));
}
