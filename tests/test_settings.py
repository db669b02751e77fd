"""Settings: each has a default, all faults come at once, and nothing unknown passes unseen."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.settings import SETTINGS, THE_SERVICE, Settings, read_settings
from bot.troubles import SettingsError


def faults(environ, file=None):
    with pytest.raises(SettingsError) as caught:
        read_settings(environ, file)
    return [(fault.what, fault.fix) for fault in caught.value.faults]


def test_without_any_setting_it_is_sqlite_the_real_service_and_polling():
    settings = read_settings({})
    assert (settings.database, settings.api, settings.webhook, settings.real_service) == (
        "sqlite:///var/evensum.sqlite",
        THE_SERVICE,
        "",
        True,
    )


def test_settings_stand_in_the_order_of_the_fields():
    assert len(SETTINGS) == len(Settings.__slots__)
    assert read_settings({"EVENSUM_LISTEN": "0.0.0.0:81", "EVENSUM_LOG": "debug"}).listen == ("0.0.0.0", 81)


def test_every_default_is_allowed_and_every_setting_says_what_it_means():
    for setting in SETTINGS:
        setting.read(setting.default)
        assert setting.meaning.endswith(".") and setting.allowed


def test_all_faults_are_told_at_once():
    found = faults(
        {
            "EVENSUM_TOKN": "1",
            "EVENSUM_TOKEN": "abc",
            "EVENSUM_DATABASE_URL": "mysql://x",
            "EVENSUM_LISTEN": "8080",
            "EVENSUM_LANGUAGE": "xx",
            "EVENSUM_WEBHOOK_URL": "http://example.org/in",
            "EVENSUM_CONTENT": "/nowhere",
            "PATH": "/bin",
        }
    )
    assert found[0] == ("There is no setting EVENSUM_TOKN.", "Did you mean EVENSUM_TOKEN?")
    assert [what.split()[0] for what, _ in found[1:]] == [
        "EVENSUM_TOKEN",
        "EVENSUM_DATABASE_URL",
        "EVENSUM_CONTENT",
        "EVENSUM_LANGUAGE",
        "EVENSUM_WEBHOOK_URL",
        "EVENSUM_LISTEN",
    ]


def test_a_fault_never_shows_the_token():
    assert "secretword" not in str(faults({"EVENSUM_TOKEN": "12 secretword"}))


def test_a_webhook_needs_its_secret():
    [(what, _)] = faults({"EVENSUM_WEBHOOK_URL": "https://example.org/in"})
    assert what == "A webhook needs EVENSUM_WEBHOOK_SECRET."
    set_up = {"EVENSUM_WEBHOOK_URL": "https://example.org/in", "EVENSUM_WEBHOOK_SECRET": "abc"}
    assert read_settings(set_up).webhook == "https://example.org/in"


def test_the_environment_wins_over_the_file(tmp_path):
    file = tmp_path / "evensum.env"
    file.write_text('# ours\n\nEVENSUM_LANGUAGE = "es"\nEVENSUM_LOG=warning\n')
    settings = read_settings({"EVENSUM_LOG": "debug"}, file)
    assert (settings.language, settings.log) == ("es", "debug")


def test_faults_in_the_file_name_the_line(tmp_path):
    file = tmp_path / "evensum.env"
    file.write_text("EVENSUM_LANGUAGE=en\nEVENSUM_LOGG=debug\nwhat is this\n")
    with pytest.raises(SettingsError) as caught:
        read_settings({}, file)
    assert [fault.where for fault in caught.value.faults] == [f"{file}:3", f"{file}:2"]


def test_a_settings_file_that_is_not_there_is_a_fault():
    [(what, _)] = faults({}, Path("/nowhere/evensum.env"))
    assert what == "The settings file can't be read."


@pytest.mark.parametrize("url", ["sqlite:///x.sqlite", "sqlite:////a/b.sqlite", "postgresql://u:p@h/d"])
def test_databases_that_may_be_used(url):
    assert read_settings({"EVENSUM_DATABASE_URL": url}).database == url
