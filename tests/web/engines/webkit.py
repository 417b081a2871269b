#!/usr/bin/python3
"""The smallest browser around WebKitGTK: one window without a frame, led by WebKitWebDriver, on a profile that lasts.

    webkit.py PROFILE WIDTH HEIGHT

WebKitGTK brings a MiniBrowser, but as soon as a driver leads that one it keeps nothing beyond its closing. It is the
distribution's Python that has the bindings (gir1.2-webkit2-4.1), so no other is looked for.
"""

import os
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402

profile, width, height = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
context = WebKit2.WebContext(
    website_data_manager=WebKit2.WebsiteDataManager(
        base_data_directory=os.path.join(profile, "data"),
        base_cache_directory=os.path.join(profile, "cache"),
    )
)
view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)


def led(_context, session):
    """A driver has come: it is told what it leads, and given the one view there is."""
    engine = WebKit2.ApplicationInfo()
    engine.set_name("WebKitGTK")
    engine.set_version(WebKit2.get_major_version(), WebKit2.get_minor_version(), WebKit2.get_micro_version())
    session.set_application_info(engine)
    session.connect("create-web-view", lambda *_: view)


context.connect("automation-started", led)
context.set_automation_allowed(True)

window = Gtk.Window(default_width=width, default_height=height, decorated=False)
window.add(view)
window.connect("destroy", Gtk.main_quit)
view.connect("close", Gtk.main_quit)
window.show_all()
Gtk.main()
