"""Serves a stand-in on a loopback port, in the caller's own event loop."""

from __future__ import annotations

import asyncio
import socket
from collections.abc import AsyncGenerator
from contextlib import asynccontextmanager, nullcontext
from dataclasses import dataclass, field

import uvicorn

from bot.standin.app import StandIn


@dataclass(slots=True)
class Served:
    """A stand-in that can be reached. The addresses are what the client library is given."""

    standin: StandIn
    port: int
    server: uvicorn.Server
    held: set[asyncio.Task[None]] = field(default_factory=set)
    """Stretches in which nobody is let in, under way."""

    @property
    def address(self) -> str:
        """Return the address of the phone page, without a slash at the end."""
        return f"http://127.0.0.1:{self.port}"

    @property
    def base_url(self) -> str:
        """Return the client library's base_url."""
        return f"{self.address}/bot"

    @property
    def base_file_url(self) -> str:
        """Return the client library's base_file_url."""
        return f"{self.address}/file/bot"

    async def stop_listening(self) -> None:
        """Let nobody in and cut all lines: from now on a connection is refused."""
        for listener in self.server.servers:
            listener.close()
        self.server.servers.clear()
        for line in list(self.server.server_state.connections):
            transport = getattr(line, "transport", None)
            if transport is not None:
                transport.abort()
        await asyncio.sleep(0)

    async def listen_again(self) -> None:
        """Listen at the same port as before."""
        config = self.server.config
        protocol = config.http_protocol_class
        state = self.server.server_state

        def answer() -> asyncio.Protocol:
            made: asyncio.Protocol = protocol(
                config=config, server_state=state, app_state=self.server.lifespan.state
            )  # type: ignore[call-arg]
            return made

        listener = await asyncio.get_running_loop().create_server(answer, sock=_listening(self.port))
        self.server.servers.append(listener)

    def refuse(self, seconds: float) -> None:
        """Refuse connections for so many seconds."""
        task = asyncio.get_running_loop().create_task(self._refuse(seconds))
        self.held.add(task)
        task.add_done_callback(self.held.discard)

    async def _refuse(self, seconds: float) -> None:
        await asyncio.sleep(0.05)  # the request that asked for this still gets its answer
        await self.stop_listening()
        await asyncio.sleep(seconds)
        await self.listen_again()


@asynccontextmanager
async def serve(standin: StandIn, port: int = 0) -> AsyncGenerator[Served]:
    """Serve a stand-in while the block runs; port 0 takes a free one.

    OSError if the port is taken.
    """
    held = _listening(port)
    number: int = held.getsockname()[1]
    config = uvicorn.Config(
        standin.app,
        log_level="warning",
        access_log=False,
        ws="none",
        server_header=False,
        timeout_graceful_shutdown=2,
    )
    server = _Server(config)
    served = Served(standin, number, server)
    standin.control.refuse = served.refuse
    running = asyncio.create_task(server.serve(sockets=[held]))
    while not server.started:
        if running.done():
            running.result()
            raise OSError(f"The stand-in could not be served at port {number}.")
        await asyncio.sleep(0.005)
    try:
        yield served
    finally:
        for task in served.held:
            task.cancel()
        server.should_exit = True
        standin.close()
        await running
        held.close()


class _Server(uvicorn.Server):
    """A server that leaves the process's signals alone: they are the caller's business."""

    def capture_signals(self):  # type: ignore[no-untyped-def]
        """Capture none."""
        return nullcontext()


def _listening(port: int) -> socket.socket:
    # Named in full, the loop knows it for TCP and sends small answers at once; else each waits 40 ms.
    held = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    held.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    held.bind(("127.0.0.1", port))
    held.listen(2048)
    held.setblocking(False)
    return held
