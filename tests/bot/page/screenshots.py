"""Pictures of the page: python -m tests.bot.page.screenshots FOLDER. A newcomer's first minutes at three widths.

The gym is invented, and so is everything said in it.
"""

import asyncio
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from playwright.async_api import expect

from bot.clock import now
from tests.bot.page import browser
from tests.bot.page.browser import Screen
from tests.bot.page.gym import free_port, gym, served

SIZES = {"wide": (1440, 900), "middle": (820, 1000), "phone": (360, 760)}
SCHEMES = ("light", "dark")
_COLOURS = 64


async def _live(screen: Screen) -> None:
    """Train, correct, ache; the coach looks, a challenge opens."""
    await screen.write("lifter", "what now")
    await screen.see("lifter", "Next:")
    await screen.write("lifter", "goblet squat 6 kg 10, 10, 9, 2 left")
    await screen.see("lifter", "Goblet squat 6 kg")
    await screen.write("lifter", "make that 10")
    await screen.see("lifter", "Goblet squat, set 3")
    group = screen.leaf("group")
    await group.locator(".speaker select").select_option(label="Ines")
    await screen.write("group", "challenge from today for 2 weeks")
    join = (await screen.see("group", "Press join")).get_by_role("button", name="join", exact=True)
    for name in ("Mira", "Tomas"):
        await group.locator(".speaker select").select_option(label=name)
        await join.click()
        await expect(screen.lines("group", "is in")).to_have_count(1 + (name == "Tomas"))
    await screen.write("coach", "overview")
    await screen.see("coach", "Everyone")
    await screen.write("lifter", "left knee 4/10")
    await screen.see("coach", "Mira: left knee")


async def shoot(folder: Path) -> None:
    """All of them into that folder."""
    with TemporaryDirectory() as scratch, served(gym(Path(scratch), now()), free_port(), "--clock") as address:
        async with browser.browser() as one:
            await _live(await Screen.open(one, address))
            for name, (width, height) in SIZES.items():
                for scheme in SCHEMES:
                    size = {"width": width, "height": height}
                    screen = await Screen.open(one, address, viewport=size, color_scheme=scheme)
                    await screen.see("lifter", "Left knee, 4 of 10")
                    await screen.page.evaluate("Promise.all([...document.images].map((image) => image.decode()))")
                    path = folder / f"page-{name}-{scheme}.png"
                    await screen.page.screenshot(path=path)
                    _shrink(path)


def _shrink(path: Path) -> None:
    """Few colours are enough for paper and ink."""
    with Image.open(path) as picture:
        small = picture.convert("RGB").quantize(_COLOURS, dither=Image.Dither.NONE)
    small.save(path, optimize=True)


if __name__ == "__main__":
    where = Path(sys.argv[1] if len(sys.argv) > 1 else "pictures")
    where.mkdir(parents=True, exist_ok=True)
    asyncio.run(shoot(where))
