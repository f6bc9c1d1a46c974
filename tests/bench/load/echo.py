"""The barest echo bot with the client library as it comes: updates one by one, nothing kept. A process of its own.

python -m tests.bench.load.echo URL TOKEN httpx|aiohttp
"""

import sys
from typing import Any

from telegram import Update
from telegram.ext import Application, MessageHandler, filters

from tests.bench.load.aio_request import AioRequest


async def echo(update: Update, _context: Any) -> None:
    """Say the same."""
    if update.message is not None and update.message.text is not None:
        await update.message.reply_text(update.message.text)


def main() -> None:
    """Run until stopped."""
    url, token, layer = sys.argv[1:]
    build = Application.builder().token(token).base_url(url)
    if layer == "aiohttp":
        build = build.request(AioRequest()).get_updates_request(AioRequest())
    app = build.build()
    app.add_handler(MessageHandler(filters.TEXT, echo))
    app.run_polling(bootstrap_retries=-1)


if __name__ == "__main__":
    main()
