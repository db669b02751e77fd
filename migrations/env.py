"""How Alembic meets our tables: one transaction, on a connection that the caller opened."""

from __future__ import annotations

import os

from alembic import context

from bot.records.base import BigKey, Packed, UtcDateTime, all_tables, create_engine


def _plain(kind: str, item: object, autogen: object) -> str | bool:
    """Write our column types as what the database knows, so that old migrations need none of our code."""
    if kind != "type":
        return False
    if isinstance(item, UtcDateTime):
        return "sa.DateTime(timezone=True)"
    if isinstance(item, Packed):
        return "sa.Text()"
    if item is BigKey:
        return 'sa.BigInteger().with_variant(sa.Integer(), "sqlite")'
    return False


def _run(connection: object) -> None:
    context.configure(
        connection=connection,
        target_metadata=all_tables(),
        render_item=_plain,
        render_as_batch=True,
        compare_type=True,
        transaction_per_migration=False,
        on_version_apply=context.config.attributes.get("told"),
    )
    with context.begin_transaction():
        context.run_migrations()


given = context.config.attributes.get("connection")
if given is not None:
    _run(given)
else:  # `make migration`, from a shell
    engine = create_engine(os.environ["EVENSUM_DATABASE_URL"])
    with engine.begin() as opened:
        _run(opened)
    engine.dispose()
