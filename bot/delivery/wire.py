"""
HTTP to the messenger: the library's own place for another client, filled with one whose parsing is not Python.

A reply is one call, and with the client that the library brings the call costs more than everything else that a reply takes.
"""

from typing import Any, ClassVar

import aiohttp
import httpx
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData
from yarl import URL

CONNECT_S = 10.0
WRITE_S = 60.0
"""As long as an upload may take. [s]"""
FORM = "application/x-www-form-urlencoded"


class NeverLeftError(NetworkError):
    """There was no connection: nothing can have arrived."""


class Wire(BaseRequest):
    """A few connections that are kept open."""

    NEVER_LEFT: ClassVar = (
        aiohttp.ClientConnectorError,
        aiohttp.ConnectionTimeoutError,
        aiohttp.ClientConnectorCertificateError,
    )

    def __init__(self, connections: int, answer_s: float) -> None:
        """
        Nothing is opened yet.

        Args:
            connections: As many as there can be calls at a time.
            answer_s: As long as an answer may take. [s]
        """
        self._connections, self._answer_s = connections, answer_s
        self._session: aiohttp.ClientSession | None = None

    @property
    def read_timeout(self) -> float:
        """Seconds that an answer may take where a call does not say."""
        return self._answer_s

    async def initialize(self) -> None:
        """Nothing: it opens with its first call."""

    def _opened(self) -> aiohttp.ClientSession:
        """The connections. The settings of proxies and certificates are those of the environment."""
        if self._session is None:
            self._session = aiohttp.ClientSession(
                connector=aiohttp.TCPConnector(limit=self._connections, ssl=httpx.create_ssl_context()),
                cookie_jar=aiohttp.DummyCookieJar(),
                headers={"User-Agent": self.USER_AGENT},
                trust_env=True,
            )
        return self._session

    async def shutdown(self) -> None:
        """Close all connections."""
        session, self._session = self._session, None
        if session is not None:
            await session.close()

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: Any = BaseRequest.DEFAULT_NONE,
        write_timeout: Any = BaseRequest.DEFAULT_NONE,
        connect_timeout: Any = BaseRequest.DEFAULT_NONE,
        pool_timeout: Any = BaseRequest.DEFAULT_NONE,  # noqa: ARG002  (there are as many connections as calls)
    ) -> tuple[int, bytes]:
        """
        One call: status and body of the answer.

        Raises:
            NeverLeftError: There was no connection.
            telegram.error.TimedOut: Nobody knows whether it arrived.
            telegram.error.NetworkError: The same.
        """
        answer_s, connect_s = _given(read_timeout, self._answer_s), _given(connect_timeout, CONNECT_S)
        write_s = _given(write_timeout, WRITE_S if request_data and request_data.contains_files else answer_s)
        limits = aiohttp.ClientTimeout(total=connect_s + write_s + answer_s, connect=connect_s, sock_read=answer_s)
        data, headers = _body(request_data)
        try:
            async with self._opened().request(
                method, URL(url, encoded=True), data=data, headers=headers, timeout=limits, allow_redirects=False
            ) as answer:
                return answer.status, await answer.read()
        except self.NEVER_LEFT as error:
            raise NeverLeftError(type(error).__name__) from error
        except TimeoutError as error:
            raise TimedOut(type(error).__name__) from error
        except (aiohttp.ClientError, OSError) as error:  # its text can hold the address, and that the token
            raise NetworkError(type(error).__name__) from error


def _given(seconds: Any, usual: float) -> float:
    """The seconds that a call names, or else the usual ones."""
    return seconds if isinstance(seconds, (int, float)) else usual


def _body(request_data: RequestData | None) -> tuple[Any, dict[str, str]]:
    """What is sent, and what it is."""
    if request_data is None or not request_data.parameters:
        return None, {}
    if not request_data.contains_files:
        return request_data.url_encoded_parameters().encode(), {"Content-Type": FORM}
    form = aiohttp.FormData(request_data.json_parameters, quote_fields=False)
    for name, (filename, content, kind) in request_data.multipart_data.items():
        form.add_field(name, content, filename=filename, content_type=kind)
    return form, {}
