"""How the migration tool runs a step: on the connection that it is handed, inside its transaction."""

from alembic import context

from bot.store import contest_tables  # noqa: F401 - its tables are known once it is read
from bot.store.tables import metadata

context.configure(connection=context.config.attributes["connection"], target_metadata=metadata)
with context.begin_transaction():
    context.run_migrations()
