"""The library's calls over aiohttp instead of its default HTTP client, which is most of a reply's cost.

It also tells apart what the default does not: whether a call that failed can have reached the service.
"""

from __future__ import annotations

from typing import Any

import aiohttp
import msgspec
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData

_JSON = {"Content-Type": "application/json"}
_Unset = type(BaseRequest.DEFAULT_NONE)  # what the library passes for "as the transport likes"


class NotReached(NetworkError):
    """No connection was made: the call certainly did not arrive, and may be made again."""


class AiohttpRequest(BaseRequest):
    """`connections` calls at a time; further ones wait for a free connection."""

    def __init__(self, connections: int = 40, read_timeout: float = 15, connect_timeout: float = 5) -> None:
        self._connections = connections
        self._timeout = aiohttp.ClientTimeout(
            total=None, sock_connect=connect_timeout, sock_read=read_timeout
        )
        self._session: aiohttp.ClientSession | None = None

    @property
    def read_timeout(self) -> float | None:
        """Seconds without a byte after which a call counts as failed."""
        return self._timeout.sock_read

    async def initialize(self) -> None:
        """Open the session; connections are made when they are needed."""
        if self._session is None or self._session.closed:
            connector = aiohttp.TCPConnector(limit=self._connections, ttl_dns_cache=300)
            self._session = aiohttp.ClientSession(
                connector=connector, timeout=self._timeout, headers={"User-Agent": self.USER_AGENT}
            )

    async def shutdown(self) -> None:
        """Close all connections."""
        if self._session is not None:
            await self._session.close()

    @staticmethod
    def parse_json_payload(payload: bytes) -> dict[str, Any]:
        """Read an answer; one that isn't JSON (a proxy's page) is a failed call like any other."""
        try:
            answer: dict[str, Any] = msgspec.json.decode(payload)
        except (msgspec.DecodeError, UnicodeDecodeError) as error:
            raise NetworkError("the answer is not JSON") from error
        return answer

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: Any = BaseRequest.DEFAULT_NONE,
        write_timeout: Any = BaseRequest.DEFAULT_NONE,  # part of the interface
        connect_timeout: Any = BaseRequest.DEFAULT_NONE,
        pool_timeout: Any = BaseRequest.DEFAULT_NONE,
    ) -> tuple[int, bytes]:
        """Make one call and return status and body.

        Raises NotReached when no connection was made, TimedOut when none of the answer came in time,
        NetworkError when the line was cut; after these two the call may or may not have been carried out.
        """
        if self._session is None:
            raise RuntimeError("the transport isn't initialized")
        try:
            async with self._session.request(
                method,
                url,
                timeout=self._timeout_of(read_timeout, connect_timeout),
                **_body(request_data),
            ) as answer:
                return answer.status, await answer.read()
        except (aiohttp.ClientConnectorError, aiohttp.ConnectionTimeoutError) as error:
            raise NotReached(f"no connection: {type(error).__name__}") from error
        except TimeoutError as error:
            raise TimedOut(f"no answer in time: {type(error).__name__}") from error
        except (aiohttp.ClientError, OSError) as error:
            raise NetworkError(f"the line was cut: {type(error).__name__}") from error

    def _timeout_of(self, read: Any, connect: Any) -> aiohttp.ClientTimeout:
        if isinstance(read, _Unset) and isinstance(connect, _Unset):
            return self._timeout
        return aiohttp.ClientTimeout(
            total=None,
            sock_connect=self._timeout.sock_connect if isinstance(connect, _Unset) else connect,
            sock_read=self._timeout.sock_read if isinstance(read, _Unset) else read,
        )


def _body(data: RequestData | None) -> dict[str, Any]:
    if data is None:
        return {}
    if not data.contains_files:
        return {"data": msgspec.json.encode(data.parameters), "headers": _JSON}
    form = aiohttp.FormData()
    for name, value in data.json_parameters.items():
        form.add_field(name, value)
    for name, (filename, content, kind) in data.multipart_data.items():
        form.add_field(name, content, filename=filename, content_type=kind)
    return {"data": form}
