"""Migrations give the same tables as the models, and a database of another version is told apart."""

from __future__ import annotations

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import inspect, text

from bot.records.base import all_tables, create_engine
from bot.records.migrating import Tables, look, migrate, require_current
from bot.troubles import Trouble


@pytest.fixture
def bare(engine):
    """A database without tables."""
    with engine.begin() as connection:
        all_tables().drop_all(connection)
    return engine


def test_migrations_give_the_same_tables_as_the_models(bare):
    migrate(bare)
    with bare.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, all_tables()) == []


def test_migrations_give_the_same_keys_and_constraints_as_the_models(bare, database_url, tmp_path):
    migrate(bare)
    migrated = shape(bare)
    with bare.begin() as connection:
        all_tables().drop_all(connection)
        all_tables().create_all(connection)
    assert shape(bare) == migrated


def shape(engine):
    look = inspect(engine)
    return {
        name: (
            sorted((c["name"], str(c["type"]), c["nullable"]) for c in look.get_columns(name)),
            look.get_pk_constraint(name)["constrained_columns"],
            sorted(
                (tuple(f["constrained_columns"]), f["referred_table"]) for f in look.get_foreign_keys(name)
            ),
            sorted(tuple(u["column_names"]) for u in look.get_unique_constraints(name)),
            sorted((i["name"], tuple(i["column_names"]), i["unique"]) for i in look.get_indexes(name)),
        )
        for name in all_tables().tables
    }


def test_migrating_twice_changes_nothing(bare):
    done: list[str] = []
    migrate(bare, done.append)
    again: list[str] = []
    migrate(bare, again.append)
    assert done and again == []
    assert look(bare).tables is Tables.CURRENT
    require_current(bare)


def test_an_empty_database_is_not_run_on(bare):
    with pytest.raises(Trouble, match="`evensum migrate`"):
        require_current(bare)


def test_a_newer_database_is_refused(bare):
    migrate(bare)
    with bare.begin() as connection:
        connection.execute(text("update alembic_version set version_num = 'from the future'"))
    assert look(bare).tables is Tables.NEWER
    with pytest.raises(Trouble, match="newer Evensum"):
        require_current(bare)


def test_a_database_of_something_else_is_refused(bare):
    with bare.begin() as connection:
        connection.execute(text("create table theirs (id integer)"))
    with pytest.raises(Trouble, match="something else"):
        require_current(bare)


def test_looking_at_a_database_creates_no_tables(tmp_path):
    engine = create_engine(f"sqlite:///{tmp_path / 'new.sqlite'}")
    assert look(engine).tables is Tables.EMPTY
    assert inspect(engine).get_table_names() == []
