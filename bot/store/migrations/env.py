"""Runs the migrations on the connection that `bot.store.schema` hands over."""

from alembic import context

from bot.store import tables

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=tables.Base.metadata,
    render_as_batch=True,  # SQLite cannot ALTER: a table is copied
    compare_type=True,
)
with context.begin_transaction():
    context.run_migrations()
