#!/usr/bin/python3
"""A bare WebKitGTK window for WebKitWebDriver: of any size, dark when told, and with the clipboard allowed.

Its own MiniBrowser is never narrower than 447 px and refuses the clipboard. `dark` or `light` is told by a line in the
pipe that TAREBOOK_SCHEMES names; what is downloaded goes into the folder TAREBOOK_DOWNLOADS.
"""
import os

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import GLib, Gtk, WebKit2

context = WebKit2.WebContext.new_ephemeral()
context.set_automation_allowed(True)


def downloaded(_context, download):
    def named(_download, name):
        download.set_destination("file://" + os.path.join(os.environ["TAREBOOK_DOWNLOADS"], name))
        return True

    download.connect("decide-destination", named)


def allowed(_view, request):
    request.allow()
    return True


def new_view(_session):
    settings = WebKit2.Settings(javascript_can_access_clipboard=True)
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True, settings=settings)
    view.connect("permission-request", allowed)
    window = Gtk.Window(decorated=False, default_width=800, default_height=600)
    view.connect("close", lambda _view: window.destroy())
    window.add(view)
    window.show_all()
    view.grab_focus()
    return view


def started(_context, session):
    information = WebKit2.ApplicationInfo()
    information.set_name("tarebook-tests")
    information.set_version(1, 0, 0)
    session.set_application_info(information)
    session.connect("create-web-view", new_view)


def told(pipe, _condition):
    scheme = os.read(pipe, 100).decode().split()[-1]
    Gtk.Settings.get_default().set_property("gtk-application-prefer-dark-theme", scheme == "dark")
    return True


context.connect("download-started", downloaded)
context.connect("automation-started", started)
# Opened for writing too, or the end of one line would be the end of the pipe.
GLib.io_add_watch(os.open(os.environ["TAREBOOK_SCHEMES"], os.O_RDWR | os.O_NONBLOCK), GLib.IO_IN, told)
Gtk.main()
