"""The live air: one plain websocket for each scene of a page, and one question at a time on it."""

import asyncio
import logging
from contextlib import suppress
from time import monotonic
from urllib.parse import urlsplit

from fastapi import WebSocket, WebSocketDisconnect
from nicegui import app

from hoodwright.errors import Cancelled, HoodwrightError, InputError, WorkplaceError
from hoodwright.jobs import Latest, Progress, Report
from hoodwright.tasks import warm_up
from hoodwright.tasks.air.live import LiveAir, LiveScene
from hoodwright.tasks.air.live_layers import layer_of
from hoodwright.web import wire
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft
from hoodwright.web.live_arrangement import Made
from hoodwright.web.live_ask import Ask, number_of, read
from hoodwright.workplace import Workplace

FOREIGN = 1008  # of a websocket that is closed: against the rules
AT_LEAST_S = 0.1  # between two tellings of how far the work is, unless the words change
MEANWHILE = "; the page works meanwhile"
log = logging.getLogger(__name__)


def register(desk: Desk) -> None:
    """The websocket at /live; that of a desk before this one is taken away."""
    app.remove_route("/live")

    @app.websocket("/live")
    async def live(
        socket: WebSocket,
        file: str | None = None,
        arrangement: str = "",
        hood: str = "",
        source: str = "",
        distance: str = "",
    ) -> None:
        if not is_own_page(socket.headers.get("origin"), socket.headers.get("host", "")):
            await socket.close(FOREIGN)
            return
        await socket.accept()
        await _Talk(socket, desk, file, Made(arrangement, hood, source, distance)).go_on()


def is_own_page(origin: str | None, host: str) -> bool:
    """Whether a request comes from a page of this server. No browser leaves out the origin of a websocket."""
    return origin is None or urlsplit(origin).netloc.casefold() == host.casefold() != ""


class _Talk:
    """One open socket: it takes requests, and answers the newest one in a thread of its own."""

    def __init__(self, socket: WebSocket, desk: Desk, file: str | None, made: Made):
        self.socket, self.desk, self.file, self.made = socket, desk, file, made
        self.draft: Draft | None = None
        self.loop = asyncio.get_running_loop()
        self.out: asyncio.Queue[str | bytes] = asyncio.Queue()
        self.work = {"air": Latest(self._air, finish_running=True), "layer": Latest(self._layer, finish_running=True)}
        self.sent: tuple = ()

    async def go_on(self) -> None:
        """Until the browser leaves."""
        sender = asyncio.create_task(self._send())
        try:
            while (message := await self.socket.receive())["type"] != "websocket.disconnect":
                self._take(message.get("text"))
        finally:
            for latest in self.work.values():
                latest.cancel()
            sender.cancel()

    async def _send(self) -> None:
        with suppress(RuntimeError, OSError, WebSocketDisconnect):  # it left meanwhile; the receiver ends
            while True:
                message = await self.out.get()
                await (self.socket.send_text(message) if isinstance(message, str) else self.socket.send_bytes(message))

    def _take(self, text: str | None) -> None:
        try:
            if text is None:
                raise InputError("the request is binary; send one JSON object as text")
            ask = read(text)
            workplace = self._workplace()
        except HoodwrightError as error:
            self._put(wire.fault(number_of(text or ""), _in_one_sentence(error)))
            return
        self.work[ask.ask].ask(ask, workplace, listener=_Teller(self, ask.n))

    def _workplace(self) -> Workplace:
        """The draft as it stands now, in the units that the page shows."""
        self.draft = self.draft or self.desk.draft(self.file)
        if self.draft is None:
            raise InputError(f"there is no workplace file {self.file!r} here; choose another one")
        if self.draft.faults:
            raise WorkplaceError(list(self.draft.faults))
        workplace = self.draft.workplace
        return workplace.model_copy(update={"units": self.draft.system})

    def _air(self, progress: Progress, ask: Ask, workplace: Workplace) -> None:
        def answer() -> None:
            live, scene = self._scene(progress, ask, workplace)
            if ask.field or scene.lattice_key != self.sent:
                self._put(wire.air(ask.n, scene, live.lattice(scene)))
                self.sent = scene.lattice_key
            self._put(wire.stream(ask.n, scene, live.stream(scene)))
            self._put(wire.share(ask.n, live.share(scene, _quiet(progress))))

        self._answer(ask, answer)

    def _layer(self, progress: Progress, ask: Ask, workplace: Workplace) -> None:
        def answer() -> None:
            _, scene = self._scene(progress, ask, workplace)
            self._put(wire.layer(ask.n, ask.layer, layer_of(scene, ask.layer, ask.plane, _quiet(progress))))

        self._answer(ask, answer)

    def _scene(self, progress: Progress, ask: Ask, workplace: Workplace) -> tuple[LiveAir, LiveScene]:
        warm_up.wait(progress)
        live = LiveAir(self.made.of(workplace), ask.hood, ask.source)
        return live, live.air(ask.source_at, ask.hood_at, ask.flow, ask.draught, progress)

    def _answer(self, ask: Ask, answer) -> None:
        """In a thread: whatever goes wrong becomes one message."""
        try:
            answer()
        except Cancelled:
            return
        except HoodwrightError as error:
            self._put(wire.fault(ask.n, _in_one_sentence(error)))
        except Exception:
            log.exception("the live air failed")
            self._put(wire.fault(ask.n, "the computed air met a fault of its own; the server's log says more"))

    def _put(self, message: str | bytes) -> None:
        with suppress(RuntimeError):  # the server is stopping
            self.loop.call_soon_threadsafe(self.out.put_nowait, message)


class _Teller:
    """Tells the browser how far one request is, not too often."""

    def __init__(self, talk: _Talk, n: int | None):
        self.talk, self.n = talk, n
        self.last, self.words = 0.0, ""

    def __call__(self, now: Report) -> None:
        if now.doing == self.words and monotonic() - self.last < AT_LEAST_S:
            return
        self.last, self.words = monotonic(), now.doing
        waits = not warm_up.state().ready
        fraction = warm_up.state().fraction if waits else now.fraction
        self.talk._put(wire.doing(self.n, fraction, now.doing + MEANWHILE * waits))


def _quiet(progress: Progress) -> Progress:
    """Says nothing, and stops when the work shall stop."""
    return Progress(lambda _: progress.check())


def _in_one_sentence(error: HoodwrightError) -> str:
    if isinstance(error, WorkplaceError):
        more = f" (and {len(error.faults) - 1} more)" if len(error.faults) > 1 else ""
        return f"the file has a fault to mend first: {error.faults[0]}{more}"
    return " ".join(str(error).split())
