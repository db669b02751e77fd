"""The phone page in a real browser: what is sent is seen, what is pressed arrives, nothing typed runs."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.async_api import Browser, Page, async_playwright, expect
from telegram import Bot, BotCommand, InlineKeyboardButton, InlineKeyboardMarkup, MessageEntity

from bot.now import DemoClock
from bot.standin import Person, Served, StandIn, moment, serve

CHROMIUM = Path("/usr/bin/chromium")
TOKEN = "900000001:loopback-only"
WREN, TOVE = 103, 102
WIDE, NARROW = {"width": 1280, "height": 900}, {"width": 360, "height": 740}


@pytest.fixture
async def served() -> AsyncIterator[Served]:
    clock = DemoClock(datetime(2026, 9, 15, 6, 50, tzinfo=UTC))
    people = [
        Person(WREN, "Wren", "Bramble", started=True, about="student, 12"),
        Person(TOVE, "Tove", "Bramble", started=True, about="parent"),
    ]

    def move(to: str) -> None:
        clock.go_to(moment(clock.now(), to, "Europe/London"))

    async with serve(StandIn(clock, TOKEN, people, on_clock=move, zone="Europe/London")) as one:
        yield one


@pytest.fixture
async def browser() -> AsyncIterator[Browser]:
    expect.set_options(timeout=60_000)
    async with async_playwright() as playwright:
        one = await playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        yield one
        await one.close()


@pytest.fixture
async def troubles() -> list[str]:
    return []


@pytest.fixture
async def page(browser: Browser, served: Served, troubles: list[str]) -> AsyncIterator[Page]:
    one = await browser.new_page(viewport=WIDE)  # type: ignore[arg-type]
    one.on("pageerror", lambda error: troubles.append(str(error)))
    one.on("console", lambda line: troubles.append(line.text) if line.type == "error" else None)
    one.on("dialog", lambda dialog: troubles.append(dialog.message))
    await one.goto(served.address)
    await expect(one.get_by_role("region", name="Phone: Wren Bramble")).to_be_visible()
    yield one
    await one.close()
    assert troubles == []


@pytest.fixture
def standin(served: Served) -> StandIn:
    return served.standin


async def test_a_day_at_a_glance(page: Page, bot: Bot, standin: StandIn, png: bytes) -> None:
    wren = page.get_by_role("region", name="Phone: Wren Bramble")
    log = wren.get_by_role("log")
    text = "3. What is 1/2 + 1/4? <b>no</b> secret /today"
    entities = [MessageEntity("bold", 0, 2), MessageEntity("spoiler", text.index("secret"), 6)]
    buttons = [[InlineKeyboardButton("Hint", callback_data="hint:3")]]
    asked = await bot.send_message(WREN, text, entities=entities, reply_markup=InlineKeyboardMarkup(buttons))
    await expect(log.get_by_text("<b>no</b>")).to_be_visible()
    await expect(log.locator("strong")).to_have_text("3.")
    await expect(page.get_by_role("navigation").get_by_role("button", name="Wren")).to_contain_text("1 new")

    # a hidden word is shown only when it is asked for
    await wren.get_by_role("button", name="Hidden words. Press to show.").click()
    await expect(wren.get_by_role("button", name="Hidden words")).to_have_count(0)
    await expect(page.get_by_role("navigation").get_by_role("button", name="Wren")).not_to_contain_text("new")

    # a press waits for its answer, which is then shown
    await wren.get_by_role("button", name="Hint").click()
    (press,) = await bot.get_updates(timeout=5)
    assert press.callback_query is not None and press.callback_query.data == "hint:3"
    await expect(wren.get_by_role("button", name="Hint")).to_have_attribute("aria-disabled", "true")
    await bot.answer_callback_query(press.callback_query.id, "Make the halves into quarters.")
    await expect(wren.get_by_text("Make the halves into quarters.")).to_be_visible()
    await expect(wren.get_by_role("button", name="Hint")).not_to_have_attribute("aria-disabled", "true")

    # an answer to a chosen message, by keyboard alone
    await log.get_by_role("button", name=re.compile("^Answer: 3")).focus()
    await page.keyboard.press("Enter")
    await page.keyboard.type("3/4")
    await page.keyboard.press("Enter")
    answer = (await bot.get_updates(offset=press.update_id + 1, timeout=5))[0].message
    assert answer is not None and answer.text == "3/4"
    assert answer.reply_to_message is not None and answer.reply_to_message.message_id == asked.message_id
    await expect(log.get_by_role("button", name=re.compile("^to Evensum: 3"))).to_be_visible()

    # a picture with its words, an edit, a deletion
    await bot.send_photo(WREN, png, caption="A row", api_kwargs={"evensum_alt": "Eight sacks in a row"})
    await expect(log.get_by_role("img", name="Eight sacks in a row")).to_be_visible()
    await bot.edit_message_text("Right.", WREN, asked.message_id)
    await expect(log.get_by_text("Right.")).to_be_visible()
    await expect(log.get_by_role("button", name="Hint")).to_have_count(0)
    await bot.delete_message(WREN, asked.message_id)
    await expect(log.get_by_text("Right.")).to_have_count(0)


async def test_nothing_that_is_typed_becomes_markup(page: Page, bot: Bot, standin: StandIn) -> None:
    wicked = "<img src=x onerror=alert(1)><script>alert(2)</script>"
    standin.phones.say(WREN, wicked)
    link = [MessageEntity("text_link", 0, 4, url="tg://javascript:alert(3)")]
    await bot.send_message(WREN, f"here {wicked}", entities=link)
    log = page.get_by_role("region", name="Phone: Wren Bramble").get_by_role("log")
    await expect(log.get_by_text(wicked)).to_have_count(2)
    assert await log.locator("img, script, a").count() == 0


async def test_a_link_of_ours_opens_on_the_phone_that_is_chosen(page: Page, bot: Bot) -> None:
    await bot.send_message(WREN, "For Tove: https://t.me/evensum_bot?start=Ab3_x-9")
    await page.get_by_role("button", name="https://t.me/evensum_bot?start=Ab3_x-9").click()
    await page.get_by_role("dialog").get_by_role("button", name="Tove Bramble").click()
    (update,) = await bot.get_updates(timeout=5)
    assert update.message is not None
    assert (update.message.chat_id, update.message.text) == (TOVE, "/start Ab3_x-9")


async def test_commands_files_and_small_things(page: Page, bot: Bot, png: bytes) -> None:
    await bot.set_my_commands([BotCommand("today", "where today stands")])
    wren = page.get_by_role("region", name="Phone: Wren Bramble")
    await wren.get_by_text("Commands").click()
    await wren.get_by_role("button", name="/today where today stands").click()
    await wren.get_by_text("More", exact=True).click()
    await wren.get_by_role("button", name="Sticker").click()
    await wren.get_by_role("button", name="Voice message").click()
    await wren.get_by_label("Pictures").set_input_files(
        [{"name": f"{n}.png", "mimeType": "image/png", "buffer": png} for n in range(2)]
    )
    await expect(wren.locator(".picture img")).to_have_count(3)
    await wren.get_by_role("button", name="Block the bot").click()
    await expect(wren.get_by_role("button", name="Unblock the bot")).to_be_visible()
    kinds = []
    for update in await bot.get_updates():
        message = update.message
        parts = ("text", "sticker", "voice", "photo")
        kinds.append(next((part for part in parts if message and getattr(message, part)), "member"))
    assert kinds == ["text", "sticker", "voice", "photo", "photo", "member"]


async def test_the_clock_goes_on_by_a_button(page: Page) -> None:
    await expect(page.locator("#now")).to_have_text("Tuesday, 15 September 2026, 07:50")
    await page.get_by_role("button", name="Monday").click()
    await expect(page.locator("#now")).to_have_text("Monday, 21 September 2026, 08:00")


async def test_a_page_that_was_away_catches_up(
    page: Page, served: Served, bot: Bot, troubles: list[str]
) -> None:
    await served.stop_listening()
    await expect(page.get_by_text("The stand-in does not answer.")).to_be_visible()
    served.standin.phones.say(WREN, "while you were away")
    await served.listen_again()
    await expect(page.get_by_text("while you were away")).to_be_visible()
    troubles.clear()  # the browser's own lines about the cut line


@pytest.mark.parametrize("scheme", ["light", "dark"])
async def test_at_360_pixels_one_phone_fits_and_text_is_readable(
    scheme: str, browser: Browser, served: Served, bot: Bot
) -> None:
    await bot.send_message(
        WREN,
        "Good morning, Wren. " + "abcdefghij" * 12,
        reply_markup=InlineKeyboardMarkup([[InlineKeyboardButton("Start", callback_data="s")]]),
    )
    page = await browser.new_page(viewport=NARROW, color_scheme=scheme)  # type: ignore[arg-type]
    await page.goto(f"{served.address}/#{WREN}")
    await expect(page.get_by_role("button", name="Start")).to_be_visible()
    assert await page.evaluate("document.documentElement.scrollWidth") == 360
    assert await page.get_by_role("region", name=re.compile("^Phone: ")).count() == 1
    box = await page.get_by_role("button", name="Start").bounding_box()
    assert box is not None and box["height"] >= 40
    for name in ("--ink", "--soft", "--pen", "--fresh", "--alarm"):
        # WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1
        assert await page.evaluate(CONTRAST, name) >= 4.5, name
    await page.close()


CONTRAST = """(name) => {
  const root = getComputedStyle(document.documentElement);
  const light = (hex) => [1, 3, 5].map((n) => parseInt(hex.trim().slice(n, n + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
    .reduce((sum, c, n) => sum + c * [0.2126, 0.7152, 0.0722][n], 0);
  const [a, b] = [root.getPropertyValue(name), root.getPropertyValue("--slip")].map(light).sort((x, y) => y - x);
  return (a + 0.05) / (b + 0.05);
}"""
