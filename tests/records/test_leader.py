"""One process at a time leads on a database; the lock ends with whoever holds it."""

from __future__ import annotations

import signal
import subprocess
import sys

from bot.records.base import create_engine
from bot.records.leader import Leader

HOLD = """
import sys, time
from bot.records.base import create_engine
from bot.records.leader import Leader
leader = Leader(create_engine(sys.argv[1]))
print(leader.try_to_lead(), flush=True)
time.sleep(60)
"""


def test_only_one_leads_until_it_steps_down(database_url):
    one, other = (Leader(create_engine(database_url)) for _ in range(2))
    assert [one.try_to_lead(), other.try_to_lead(), one.try_to_lead(), other.leads()] == [
        True,
        False,
        True,
        False,
    ]
    one.step_down()
    assert [one.leads(), other.try_to_lead()] == [False, True]
    other.step_down()


def test_who_stepped_down_leads_no_more(database_url):
    one, other = (Leader(create_engine(database_url)) for _ in range(2))
    one.step_down()
    assert [one.try_to_lead(), other.try_to_lead()] == [False, True]
    other.step_down()


def test_a_killed_process_leads_no_more(database_url):
    holder = subprocess.Popen([sys.executable, "-c", HOLD, database_url], stdout=subprocess.PIPE, text=True)
    assert holder.stdout is not None and holder.stdout.readline() == "True\n"
    other = Leader(create_engine(database_url))
    assert not other.try_to_lead()
    holder.send_signal(signal.SIGKILL)
    holder.wait()
    while not other.try_to_lead():  # PostgreSQL notices within moments
        pass
    other.step_down()


def test_a_cut_connection_leads_no_more(engine, database_kind):
    leader = Leader(engine)
    assert leader.try_to_lead()
    if database_kind == "postgresql":
        with create_engine(str(engine.url.render_as_string(hide_password=False))).begin() as admin:
            admin.exec_driver_sql(
                "select pg_terminate_backend(pid) from pg_stat_activity"
                " where datname = current_database() and pid <> pg_backend_pid()"
            )
        assert not leader.leads()
    leader.step_down()
