"""A person at the phone page: a real browser, real clicks."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from playwright.async_api import Locator, Page, async_playwright, expect

QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
PATIENCE = 60_000
"""Milliseconds."""


def shots_folder() -> Path:
    """Where screenshots are kept: outside the tree."""
    folder = Path(os.environ.get("SCREENSHOTS", Path(tempfile.gettempdir()) / "evensum-screenshots"))
    folder.mkdir(parents=True, exist_ok=True)
    return folder


@asynccontextmanager
async def browser_page(
    address: str, width: int = 1400, height: int = 900, scheme: str = "light"
) -> AsyncIterator[Page]:
    """Open the phone page in Chromium."""
    found = next((path for path in ("chromium", "google-chrome") if shutil.which(path)), "chromium")
    async with async_playwright() as play:
        browser = await play.chromium.launch(executable_path=shutil.which(found), args=list(QUIET))
        page = await browser.new_page(
            viewport={"width": width, "height": height},
            color_scheme="dark" if scheme == "dark" else "light",
            device_scale_factor=2 if width < 500 else 1,
        )
        page.set_default_timeout(PATIENCE)
        expect.set_options(timeout=PATIENCE)
        await page.goto(address)
        try:
            yield page
        finally:
            await browser.close()


class Phone:
    """One person's sheet on the page."""

    def __init__(self, page: Page, name: str) -> None:
        self.page = page
        self.sheet = page.get_by_role("region", name=f"Phone: {name}")

    async def sees(self, words: str) -> None:
        await expect(self.sheet.get_by_text(words).last).to_be_visible()

    async def presses(self, label: str) -> None:
        button = self.newest(label)
        await button.scroll_into_view_if_needed()
        await button.click()

    def newest(self, label: str) -> Locator:
        return self.sheet.locator(".log").get_by_role("button", name=label, exact=True).last

    async def types(self, words: str) -> None:
        await self.sheet.locator("textarea").fill(words)
        await self.sheet.locator("button.send").click()

    async def shot(self, name: str) -> Path:
        path = shots_folder() / f"{name}.png"
        await self.sheet.screenshot(path=path)
        return path


async def clock_on_to(page: Page, to: str) -> None:
    """Press one of the clock's buttons."""
    await page.locator(f'button[data-to="{to}"]').click()
