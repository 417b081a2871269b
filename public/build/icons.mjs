// Draws the icons: two plain bands, one through the other, as lines on paper. Run by hand (`make icons`) when the
// drawing changes; its results are committed.
import { mkdir, writeFile } from "node:fs/promises";
import { chromium } from "@playwright/test";
import { launch } from "../../tests/web/browser.js";

const icons = new URL("../icons/", import.meta.url);
const PAPER = "#f8f4ea", INK = "#23262c", ROUGE = "#8a2c20", LEAF = "#fffdf7", WASH = "#e8d3cb";

await mkdir(icons, { recursive: true });
await writeFile(new URL("icon.svg", icons), drawing({ corner: 96, scale: 1.1 }));
const browser = await chromium.launch(launch);
for (const size of [192, 512]) {
  await png(`icon-${size}.png`, size, drawing({ corner: 96, scale: 1.1 }));
  await png(`maskable-${size}.png`, size, drawing({ corner: 0, scale: 0.98 })); // inside the middle four fifths
}
await png("apple-touch-180.png", 180, drawing({ corner: 0, scale: 1.1 }));
await browser.close();

async function png(name, size, svg) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw}</style>${svg}`);
  await page.screenshot({ path: new URL(name, icons).pathname, omitBackground: true });
  await page.close();
}

function drawing({ corner, scale }) {
  const band = (x, y, line, fill) =>
    `<g fill="none" stroke="${line}" stroke-width="9"><circle cx="${x}" cy="${y}" r="109" stroke="${fill}" stroke-width="27"/>` +
    `<circle cx="${x}" cy="${y}" r="122"/><circle cx="${x}" cy="${y}" r="96"/></g>`;
  const first = band(200, 290, INK, LEAF);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512"><title>Bandwright</title>` +
    `<clipPath id="over"><circle cx="211" cy="182" r="52"/></clipPath><rect width="512" height="512" rx="${corner}" fill="${PAPER}"/>` +
    `<g transform="translate(256 256) scale(${scale}) translate(-256 -256)">` +
    `${first}${band(312, 222, ROUGE, WASH)}<g clip-path="url(#over)">${first}</g></g></svg>\n`
  );
}
