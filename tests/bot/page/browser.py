"""A real browser for the page's tests: the system's Chromium, without a screen, driven by playwright."""

import shutil
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Any

from playwright.async_api import Browser, Locator, Page, async_playwright

FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
NAMES = ("chromium", "chromium-browser", "google-chrome")


def found() -> str | None:
    """Where a Chromium is, if there is one."""
    return next((path for name in NAMES if (path := shutil.which(name))), None)


@asynccontextmanager
async def browser() -> AsyncIterator[Browser]:
    """Started, and gone after the block."""
    async with async_playwright() as driver:
        one = await driver.chromium.launch(executable_path=found(), args=FLAGS)
        try:
            yield one
        finally:
            await one.close()


class Screen:
    """One tab as a person uses it; what the browser complains about is kept."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.complaints: list[str] = []
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on("console", lambda line: self.complaints.append(line.text) if line.type == "error" else None)

    @classmethod
    async def open(cls, one: Browser, address: str, **how: Any) -> "Screen":
        context = await one.new_context(**{"viewport": {"width": 1440, "height": 900}, **how})
        context.set_default_timeout(60_000)
        screen = cls(await context.new_page())
        await screen.page.goto(address)
        await screen.leaf("lifter").locator(".pick select option").first.wait_for(state="attached")
        return screen

    def leaf(self, kind: str) -> Locator:
        """One page of the book."""
        return self.page.locator(f".leaf[data-kind={kind}]")

    def lines(self, kind: str, words: str) -> Locator:
        """Lines of that page that hold those words."""
        return self.leaf(kind).locator(".entry").filter(has_text=words)

    async def write(self, kind: str, text: str) -> None:
        """Type and send."""
        box = self.leaf(kind).locator("textarea")
        await box.fill(text)
        await box.press("Enter")

    async def see(self, kind: str, words: str) -> Locator:
        """Wait until those words stand there last; gives the last line that holds them."""
        line = self.lines(kind, words).last
        await line.wait_for()
        return line
