// The one place that says which browser the tests drive and how it is started.
import { existsSync } from "node:fs";

const places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

export const executablePath = process.env.CHROMIUM || places.find(existsSync);
if (!executablePath) throw new Error("No Chromium found: install it (`make tools`) or name it in CHROMIUM.");

export const launch = {
  executablePath,
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
  ],
};

/** A small phone held upright: what every screen is made for. A pixel a pixel: without a graphics card three times as
    many each way are nine times the painting. Specs of pictures and of paper ask for more. */
export const phone = {
  viewport: { width: 360, height: 740 },
  deviceScaleFactor: 1,
  isMobile: true,
  hasTouch: true,
  locale: "en-GB",
  timezoneId: "Europe/London",
};
