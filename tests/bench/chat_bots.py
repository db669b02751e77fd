"""The bots that `chat.py` compares, each a process of its own.

    python chat_bots.py bare-concurrent API_URL
    python chat_bots.py bare-one API_URL
    python chat_bots.py ours API_URL DATABASE_URL [paced]
    python chat_bots.py repeating API_URL DATABASE_URL [paced]

The bare ones are the client library's own echo example: default transport, its own polling, nothing stored.
"""

import asyncio
import sys
import time
from concurrent.futures import ThreadPoolExecutor

TOKEN = "900000001:loopback-only"


def bare(api: str, concurrent: bool) -> None:
    from telegram import Update
    from telegram.ext import ApplicationBuilder, ContextTypes, MessageHandler, filters

    async def echo(update: Update, context: ContextTypes.DEFAULT_TYPE) -> None:
        await update.message.reply_text(update.message.text)

    application = (
        ApplicationBuilder()
        .token(TOKEN)
        .base_url(f"{api}/bot")
        .base_file_url(f"{api}/file/bot")
        .concurrent_updates(concurrent)
        .build()
    )
    application.add_handler(MessageHandler(filters.TEXT, echo))
    application.run_polling()


def ours(api: str, database: str, paced: bool) -> None:
    from bot import app
    from bot.settings import read_settings

    settings = read_settings(
        {"EVENSUM_TOKEN": TOKEN, "EVENSUM_API_URL": api, "EVENSUM_DATABASE_URL": database}
    )
    app.set_up_log("warning")
    asyncio.run(app.run(app.build(settings, paced=paced)))


def repeating(api: str, database: str, paced: bool) -> None:
    """Our whole way of a reply, with a use case that does nothing but repeat: what the way itself costs."""
    from bot.chat.rendered import Rendered
    from bot.chat.side import ChatSide, Line, Saying
    from bot.messages import Help
    from bot.now import RealClock
    from bot.records.base import create_engine

    def route(s, what):
        return [Help(to=what.chat, role="student", topic=what.text)]

    def render(message, language):
        return Rendered(text=message.topic if isinstance(message, Help) else message.name)

    saying = Saying(route, lambda s, w: [], render, lambda s, c: {}, lambda s, c: [], None)

    async def run():
        side = ChatSide(
            create_engine(database),
            ThreadPoolExecutor(1),
            RealClock(),
            Line(TOKEN, api, paced=paced),
            lambda name: saying,
        )
        await side.run(asyncio.Event())

    asyncio.run(run())


if __name__ == "__main__":
    kind, api = sys.argv[1:3]
    time.sleep(0)
    match kind:
        case "bare-concurrent":
            bare(api, True)
        case "bare-one":
            bare(api, False)
        case "ours":
            ours(api, sys.argv[3], "paced" in sys.argv)
        case "repeating":
            repeating(api, sys.argv[3], "paced" in sys.argv)
