"""The server of the page: on this machine only, offline, with one desk for all its tabs."""

import socket
from pathlib import Path

from hoodwright.errors import InputError
from hoodwright.tasks import warm_up
from hoodwright.web.desk import Desk

FIRST_PORT = 8088
PORTS_TO_TRY = 50
BUSY_BROWSER_S = 20.0  # s: a browser that draws smoke in software may be silent so long and keep its page
LOOPBACK = ("127.0.0.1", "localhost", "::1")


def build(desk: Desk) -> None:
    """Register pages and routes for a desk."""
    from hoodwright.web import animation, api, live
    from hoodwright.web.pages import air, ducts, guide, three

    for part in (air, ducts, guide, three, api, animation, live):
        part.register(desk)


def run(
    folder: Path,
    host: str = "127.0.0.1",
    port: int | None = None,
    open_browser: bool = False,
    first: Path | None = None,
) -> None:
    """Show the workplace files of a folder in the browser until interrupted."""
    from nicegui import app, ui
    from starlette.middleware.trustedhost import TrustedHostMiddleware

    build(Desk(folder, first))
    app.on_startup(warm_up.start)
    port = free_port(host, port or FIRST_PORT)
    if host in LOOPBACK:
        app.add_middleware(TrustedHostMiddleware, allowed_hosts=[*LOOPBACK, "[::1]"])
    app.on_startup(lambda: print(f"hoodwright shows {folder} at http://{host}:{port}/  (stop with Ctrl+C)", flush=True))
    ui.run(
        host=host,
        port=port,
        title="hoodwright",
        favicon=Path(__file__).parent / "static" / "favicon.svg",
        dark=None,
        language="en-US",
        reload=False,
        show=open_browser,
        show_welcome_message=False,
        tailwind=False,
        binding_refresh_interval=None,
        ws_per_message_deflate=False,
        reconnect_timeout=BUSY_BROWSER_S,
    )


def free_port(host: str, wanted: int) -> int:
    """The wanted port, or the next one that is free."""
    for port in range(wanted, wanted + PORTS_TO_TRY):
        with socket.socket(socket.AF_INET6 if ":" in host else socket.AF_INET) as probe:
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                probe.bind((host, port))
            except OSError:
                continue
            return port
    raise InputError(f"no free port from {wanted} to {wanted + PORTS_TO_TRY - 1} on {host}; name another with --port")
