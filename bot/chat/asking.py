"""Short questions to the service, outside of a running bot: who are we, and how do updates come?"""

from __future__ import annotations

from dataclasses import dataclass

from telegram.error import InvalidToken, TelegramError

from bot.chat.client import Client
from bot.chat.side import Line
from bot.chat.transport import AiohttpRequest
from bot.troubles import Trouble


@dataclass(frozen=True, slots=True)
class Known:
    """What the service says of the bot. `hook`: where it brings updates to, empty for polling."""

    name: str
    hook: str
    waiting: int
    last_error: str


async def ask(line: Line) -> Known:
    """Ask the service about the bot. Raises Trouble where it doesn't know the token or can't be reached."""
    api = line.api.rstrip("/")
    bot = Client(
        line.token,
        base_url=f"{api}/bot",
        base_file_url=f"{api}/file/bot",
        request=AiohttpRequest(2, read_timeout=10),
        get_updates_request=AiohttpRequest(1),
    )
    try:
        await bot.initialize()
        info = await bot.get_webhook_info()
    except InvalidToken as error:
        fix = "Copy it again from the service, or ask there for a new one."
        raise Trouble("The chat service doesn't know this token.", "EVENSUM_TOKEN", fix) from error
    except TelegramError as error:
        fix = "Is this machine on the net? Is EVENSUM_API_URL right? `evensum doctor` looks at more."
        raise Trouble(f"The chat service can't be reached: {error}", line.api, fix) from error
    finally:
        await bot.shutdown()
    return Known(bot.username, info.url, info.pending_update_count, info.last_error_message or "")
