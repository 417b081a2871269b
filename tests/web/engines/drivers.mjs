// How each engine is started: the one place that knows one browser from another.
//
// Each has a driver, which listens on a port, and says what that is asked for so that it opens its browser at phone
// size on a profile. The same profile again is the same phone again, in all three.
import { accessSync, constants } from "node:fs";
import { mkdir, writeFile } from "node:fs/promises";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { executablePath, launch, phone } from "../browser.js";

const { width, height } = phone.viewport;

export const ENGINES = {
  Chromium: {
    driver: (port) => ["chromedriver", `--port=${port}`],
    capabilities: (profile) => ({
      "goog:chromeOptions": {
        binary: executablePath,
        args: ["--headless", ...launch.args, `--user-data-dir=${profile}`],
        mobileEmulation: { deviceMetrics: { width, height, pixelRatio: 1, touch: true } },
      },
    }),
  },

  Firefox: {
    driver: (port) => ["geckodriver", `--port=${port}`, "--websocket-port=0"],
    capabilities: (profile) => ({
      "moz:firefoxOptions": {
        binary: process.env.FIREFOX || onPath("firefox-esr") || onPath("firefox"),
        args: ["-headless", "-kiosk", "-profile", profile],
        prefs: {
          "toolkit.legacyUserProfileCustomizations.stylesheets": true, // see prepare
          "network.dns.disabled": true, // what Firefox itself would look for elsewhere is not found
          "ui.useOverlayScrollbars": 1, // as on a phone: they take no room
        },
      },
    }),
    environment: { MOZ_HEADLESS_WIDTH: String(width), MOZ_HEADLESS_HEIGHT: String(height) },
    // Its window is never narrower than 500 px, unless its own style says otherwise.
    async prepare(profile) {
      await mkdir(join(profile, "chrome"));
      await writeFile(join(profile, "chrome", "userChrome.css"), ":root { min-width: 0 !important }\n");
    },
  },

  // Draws on a screen only: Xvfb is one that nobody sees. Without a bus, or one would be started and left behind.
  WebKit: {
    screen: true,
    driver: (port) => ["WebKitWebDriver", `--port=${port}`],
    capabilities: (profile) => ({
      "webkitgtk:browserOptions": {
        binary: fileURLToPath(new URL("webkit.py", import.meta.url)),
        args: [profile, String(width), String(height)],
      },
    }),
    environment: {
      DBUS_SESSION_BUS_ADDRESS: "disabled:",
      GDK_BACKEND: "x11",
      GSETTINGS_BACKEND: "memory",
      LIBGL_ALWAYS_SOFTWARE: "1",
      NO_AT_BRIDGE: "1",
    },
  },
};

function onPath(command) {
  const runs = (file) => {
    try {
      accessSync(file, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  };
  return process.env.PATH.split(delimiter)
    .map((folder) => join(folder, command))
    .find(runs);
}
