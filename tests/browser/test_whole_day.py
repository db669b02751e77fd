"""The whole day on the phone page, as student, parent and tutor, in a real browser."""

from __future__ import annotations

from pathlib import Path

from support.living import Life
from support.page import Phone, browser_page, clock_on_to

from bot import demo
from bot.app import build_demo

WREN = int(demo.WREN.chat)


async def test_a_school_day_as_student_parent_and_tutor(tmp_path: Path) -> None:
    async with build_demo(tmp_path, paced=False) as running:
        life = Life(running)
        try:
            async with browser_page(running.served.address) as page:
                await live_it(page, life)
        finally:
            await life.close()


async def live_it(page, life: Life) -> None:  # type: ignore[no-untyped-def]
    wren, tove, ines = (Phone(page, n) for n in ("Wren Bramble", "Tove Bramble", "Ines Okafor-Lund"))
    await clock_on_to(page, "morning")
    await wren.sees("Today’s new lesson")
    await wren.shot("1-morning")

    await wren.presses("Start")
    await wren.sees("Send all 12 answers in one message")
    await life.quiet(WREN)
    await wren.types(life.middle(WREN)[2])
    await wren.sees("All 12 right.")
    await wren.shot("2-warm-up")
    await life.goes_on(WREN, "Worked example")
    await wren.sees("Worked example")
    await wren.shot("3-card")
    await wren.presses("Let’s try some")
    await wren.sees("Try it 1 of 4")
    await wren.presses("Next step")
    await wren.shot("4-guided")

    await life.goes_on(WREN, "1 of 8")
    await wren.types("idk")
    await wren.sees("Fair enough.")
    await life.quiet(WREN)
    await life.types_words(WREN, "{wrong}")
    await wren.sees("Not that one")
    await wren.shot("5-not-yet")
    await wren.presses("Show me")
    await wren.sees("How it’s done")
    await wren.shot("6-solution")
    life.act(WREN)
    await wren.presses("Go on")
    await life.goes_on(WREN, "See you next time.")
    await wren.shot("7-done")

    await clock_on_to(page, "evening")
    await tove.sees("Wren did")
    await tove.sees("For ten minutes")
    await tove.shot("8-digest")
    await tove.presses("Week as a picture")
    await tove.sees("week of 14 September")
    await page.wait_for_function(
        "() => [...document.querySelectorAll('.log img')].some(i => i.complete && i.naturalWidth > 0 && i.alt)"
    )
    await tove.presses("We did it")
    await tove.sees("That helps more than anything I can do")

    await ines.types("/plan wren")
    await ines.sees("Wren")
    await ines.shot("9-tutor-plan")
    await ines.types("/items wren 6")
    await ines.presses("Do it")
    await ines.shot("10-tutor-change")
    await clock_on_to(page, "morning")
    await wren.sees("6 review items")
    await wren.shot("11-next-morning")
