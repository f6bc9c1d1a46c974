"""What a newcomer does, in a real browser: train, correct, ache, alarm, the coach, the challenge, lines that break."""

from collections.abc import AsyncIterator, Iterator
from pathlib import Path

import pytest
import pytest_asyncio
from axe_playwright_python.async_playwright import Axe
from playwright.async_api import Browser, Page, expect

from bot import page_call
from bot.clock import now
from tests.bot.page import browser
from tests.bot.page.browser import Screen
from tests.bot.page.gym import free_port, gym, served

pytestmark = [
    pytest.mark.skipif(
        browser.found() is None, reason="no Chromium on this machine (Debian: apt-get install chromium)"
    ),
    pytest.mark.asyncio(loop_scope="module"),
]
STANDS = now()


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with served(gym(tmp_path_factory.mktemp("page"), STANDS), free_port(), "--clock") as found:
        yield found


@pytest_asyncio.fixture(scope="module", loop_scope="module")
async def chromium() -> AsyncIterator[Browser]:
    async with browser.browser() as one:
        yield one


async def pick(screen: Screen, name: str) -> None:
    await screen.leaf("lifter").locator(".pick select").select_option(label=name)
    await expect(screen.leaf("lifter").locator("textarea")).to_have_attribute("placeholder", f"Write as {name}")


async def grave(page: Page) -> list[tuple[str, list[str]]]:
    """What keeps somebody out, with where it is."""
    found = (await Axe().run(page)).response["violations"]
    hard = [one for one in found if one["impact"] in ("serious", "critical")]
    return [(one["id"], [node["html"] for node in one["nodes"]]) for one in hard]


async def test_trains_corrects_aches_and_the_coach_hears(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    await screen.write("lifter", "goblet squat 6 kg 10, 10, 9, 2 left")
    await screen.see("lifter", "Goblet squat 6 kg: 10, 10, 9 reps")
    own = await screen.see("lifter", "goblet squat 6 kg 10, 10, 9, 2 left")
    await own.get_by_role("button", name="Change").click()
    await expect(screen.leaf("lifter").locator("textarea")).to_have_value("goblet squat 6 kg 10, 10, 9, 2 left")
    await screen.write("lifter", "goblet squat 6 kg 10, 10, 8, 2 left")
    await screen.see("lifter", "10, 10, 8 reps")
    changed = await screen.see("lifter", "goblet squat 6 kg 10, 10, 8, 2 left")
    await expect(changed.locator(".note")).to_have_text("changed")
    await expect(screen.lines("lifter", "goblet squat 6 kg 10, 10, 9, 2 left")).to_have_count(0)
    await screen.write("lifter", "left knee 4/10")
    await screen.see("lifter", "Left knee, 4 of 10")
    await screen.see("coach", "Mira: left knee, 4 of 10")
    assert screen.complaints == []


async def test_an_alarm_reaches_the_coach_who_clears_it(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    await pick(screen, "Tomas")
    await screen.write("lifter", "chest feels tight")
    await screen.see("lifter", "local emergency number")
    alert = await screen.see("coach", "Tomas reports a chest symptom")
    await expect(alert.locator(".margin")).to_contain_text("alert")
    await screen.write("coach", "clear Tomas")
    await screen.see("coach", "Tomas")
    await screen.leaf("lifter").locator(".entry.service").last.wait_for()


async def test_a_newcomer_joins_with_the_coachs_invitation(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    await screen.write("coach", "invite Ana")
    said = await (await screen.see("coach", "For Ana, once")).locator("p").first.inner_text()
    await pick(screen, "Someone new")
    await screen.write("lifter", "hello?")
    await screen.see("lifter", "I don't know you yet")
    await screen.write("lifter", said.splitlines()[-1])
    await screen.see("lifter", "You are in, Ana.")
    await screen.see("coach", "Ana is in")
    await expect(screen.leaf("lifter").locator(".pick select option:checked")).to_have_text("Ana")


async def test_the_clock_brings_prompt_week_and_the_challenge_moves(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    group = screen.leaf("group")
    await group.locator(".speaker select").select_option(label="Ines")
    await screen.write("group", "challenge from today for 1 week")
    post = await screen.see("group", "Press join")
    await group.locator(".speaker select").select_option(label="Ruth")
    await post.get_by_role("button", name="join", exact=True).click()
    await screen.see("group", "is in")
    await expect(post.get_by_role("button", name="join", exact=True)).to_have_attribute("aria-pressed", "true")
    await pick(screen, "Ruth")
    await screen.page.get_by_role("button", name="next prompt").click()
    prompt = screen.leaf("lifter").locator(".entry.prompt").last
    await prompt.wait_for()
    await expect(prompt).to_contain_text("about")
    await screen.page.get_by_role("button", name="+1 hour").click()
    await expect(screen.page.get_by_role("button", name="+1 hour")).to_be_enabled()
    await screen.write("lifter", "pull-up 5, 5, 5, 1 left")
    await screen.see("lifter", "3 sets of 5")
    weeks = screen.leaf("coach").locator(".entry.summary")
    before = await weeks.count()
    for _ in range(2):
        await screen.page.get_by_role("button", name="Sunday evening").click()
        await expect(screen.page.get_by_role("button", name="Sunday evening")).to_be_enabled(timeout=120_000)
    await screen.leaf("lifter").locator(".entry.summary").last.wait_for()
    await weeks.nth(before).wait_for()
    await group.locator(".entry.post").nth(1).wait_for()


async def test_a_picture_opens_large_beside_its_facts(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    await screen.write("coach", "overview")
    line = await screen.see("coach", "Everyone")
    await expect(line.get_by_role("table")).to_contain_text("Mira")
    await line.get_by_role("button", name="large").click()
    dialog = screen.page.get_by_role("dialog")
    await expect(dialog).to_be_visible()
    natural = await dialog.locator("img").evaluate("image => image.decode().then(() => image.naturalWidth)")
    assert natural > 500
    assert await grave(screen.page) == []
    await screen.page.keyboard.press("Escape")
    await expect(dialog).to_be_hidden()


async def test_two_tabs_are_in_step_and_a_reload_keeps_all(address: str, chromium: Browser) -> None:
    one = await Screen.open(chromium, address)
    two = Screen(await one.page.context.new_page())
    await two.page.goto(address)
    await pick(two, "Mira")
    await one.write("lifter", "what now")
    await two.see("lifter", "what now")
    await one.leaf("lifter").locator("textarea").fill("half a sent")
    before = await one.leaf("lifter").locator(".entry p").all_inner_texts()
    await one.page.reload()
    await one.see("lifter", "what now")
    await expect(one.leaf("lifter").locator("textarea")).to_have_value("half a sent")
    after = await one.leaf("lifter").locator(".entry p").all_inner_texts()
    assert after[: len(before)] == before


async def test_a_lost_line_is_said_and_heals_and_nothing_is_sent_twice(tmp_path: Path, chromium: Browser) -> None:
    url, port = gym(tmp_path, STANDS), free_port()
    with served(url, port, "--clock") as address:
        screen = await Screen.open(chromium, address)
        await screen.page.get_by_role("button", name="+1 hour").click()
        await expect(screen.page.get_by_role("button", name="+1 hour")).to_be_enabled()
        ahead = await screen.page.locator("#now").inner_text()
    status = screen.page.get_by_role("status")
    await expect(status).to_contain_text("The line is down")
    await screen.write("lifter", "goblet squat 6 kg 8, 8, 8")
    await expect((await screen.see("lifter", "goblet squat 6 kg 8, 8, 8")).locator(".note")).to_contain_text("waits")
    with served(url, port, "--clock"):
        await screen.see("lifter", "Goblet squat 6 kg: 3 sets of 8")
        await expect(status).to_be_empty()
        await expect(screen.lines("lifter", "goblet squat 6 kg 8, 8, 8")).to_have_count(1)
        later = await screen.page.locator("#now").inner_text()
        assert later[: len("Wed 4")] == ahead[: len("Wed 4")]


async def test_a_link_opens_the_own_page_and_no_other(tmp_path: Path, chromium: Browser) -> None:
    url, port = gym(tmp_path, STANDS), free_port()
    link = await page_call.link(url, "Tomas", f"http://127.0.0.1:{port}")
    with served(url, port, "--login") as address:
        context = await chromium.new_context()
        page = await context.new_page()
        await page.goto(address)
        await expect(page.get_by_text("A link lets you in")).to_be_visible()
        assert await grave(page) == []
        await page.goto(link)
        assert await grave(page) == []
        await page.get_by_role("button", name="Open my page").click()
        screen = Screen(page)
        await screen.write("lifter", "what now")
        await screen.see("lifter", "Next:")
        await expect(screen.page.locator(".leaf")).to_have_count(1)
        await expect(screen.page.get_by_role("button", name="next prompt")).to_be_hidden()
        await page.get_by_role("button", name="Log out").click()
        await expect(page.get_by_text("A link lets you in")).to_be_visible()
        await page.goto(link)
        await page.get_by_role("button", name="Open my page").click()
        await expect(page.get_by_text("A link lets you in")).to_be_visible()


async def test_markup_in_words_stays_words(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    await pick(screen, "Ruth")
    said = "<img src=x onerror=\"document.title='broken'\"> <b>bold</b>"
    await screen.write("lifter", said)
    line = await screen.see("lifter", said)
    assert await line.locator("img, b:not(.margin b)").count() == 0
    assert await screen.page.title() == "rungbook"


async def test_the_keyboard_alone_is_enough(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address)
    box = screen.leaf("lifter").locator("textarea")
    await box.focus()
    await screen.page.keyboard.type("dumbbell row 10 kg 10, 10, 10")
    await screen.page.keyboard.press("Enter")
    await screen.see("lifter", "3 sets of 10")
    await screen.page.keyboard.press("ArrowUp")
    await expect(box).to_have_value("dumbbell row 10 kg 10, 10, 10")
    await screen.page.keyboard.press("Escape")
    await expect(box).to_have_value("")
    await screen.page.keyboard.press("Tab")
    await screen.page.keyboard.press("Tab")
    await expect(screen.leaf("lifter").get_by_role("button", name="Send", exact=True)).to_be_focused()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 820, 1440])
async def test_nothing_stands_in_the_way_of_anybody(address: str, chromium: Browser, width: int, scheme: str) -> None:
    size = {"width": width, "height": 800}
    screen = await Screen.open(chromium, address, viewport=size, color_scheme=scheme)
    await screen.leaf("lifter").locator(".entry").last.wait_for()
    assert await grave(screen.page) == []
    assert await screen.page.evaluate("document.documentElement.scrollWidth") <= width


async def test_a_phone_shows_one_page_at_a_time_and_says_what_is_new(address: str, chromium: Browser) -> None:
    screen = await Screen.open(chromium, address, viewport={"width": 360, "height": 740})
    tabs = screen.page.get_by_role("navigation", name="Pages")
    await expect(screen.leaf("coach")).to_be_hidden()
    await screen.write("lifter", "right shoulder 5/10")
    await screen.see("lifter", "ight shoulder, 5 of 10")
    coach = tabs.get_by_role("button", name="Ines")
    await expect(coach).to_contain_text("new")
    await coach.click()
    await expect(screen.leaf("coach")).to_be_visible()
    await expect(screen.leaf("lifter")).to_be_hidden()
    await expect(coach).not_to_contain_text("new")
