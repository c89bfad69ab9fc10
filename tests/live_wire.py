"""The browser's half of the live air for tests: open the socket, ask, and read what comes, the air included."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from types import SimpleNamespace
from typing import Any
from urllib.parse import urlencode

import numpy as np
from nicegui import app
from starlette.testclient import TestClient


def read_air(message: bytes) -> SimpleNamespace:
    """Header and arrays of the binary message (see web/wire.py)."""
    long = int.from_bytes(message[:4], "little")
    header = json.loads(message[4 : 4 + long])
    nodes, bases = int(np.prod(header["shape"])), len(header["bases"])
    start, many = 4 + long, 3 * nodes * bases
    velocity = np.frombuffer(message, "<f2", many, start).reshape(bases, *header["shape"], 3)
    calm = np.frombuffer(message, np.uint8, nodes, start + 2 * many).reshape(header["shape"])
    solid = np.frombuffer(message, np.uint8, nodes, start + 2 * many + nodes).reshape(header["shape"])
    whole = len(message) == start + 2 * many + 2 * nodes
    return SimpleNamespace(header=header, velocity=velocity, calm=calm, solid=solid, start=start, whole=whole)


class Line:
    """One open socket."""

    def __init__(self, socket: Any):
        self.socket = socket

    def send(self, **request: Any) -> None:
        self.socket.send_text(json.dumps(request))

    def answers(self, last: tuple[str, ...] = ("share", "fault", "layer")) -> list[Any]:
        """What comes up to the last message of an answer; the air as read by `read_air`."""
        found: list[Any] = []
        while True:
            message = self.socket.receive()
            assert message["type"] == "websocket.send", message
            if message.get("bytes") is not None:
                found.append(read_air(message["bytes"]))
                continue
            found.append(SimpleNamespace(**json.loads(message["text"])))
            if found[-1].kind in last:
                return found

    def ask(self, **request: Any) -> list[Any]:
        self.send(**{"ask": "air", "hood": "bench nozzle", "source": "solder joint", **request})
        return self.answers()


@contextmanager
def line(file: str = "demo.yaml", origin: str | None = None, **query: str) -> Iterator[Line]:
    """An open socket at the app as it is built now."""
    headers = {} if origin is None else {"origin": origin}
    url = f"/live?{urlencode({'file': file, **query})}"
    with TestClient(app).websocket_connect(url, headers=headers) as socket:
        yield Line(socket)


def kinds(messages: list[Any]) -> list[str]:
    """What came, in its order; 'doing' left out."""
    found = [getattr(message, "kind", "air") for message in messages]
    return [kind for kind in found if kind != "doing"]
