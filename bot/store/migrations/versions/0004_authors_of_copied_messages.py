"""Authors of copied messages, so that whoever is forgotten is forgotten in copies too."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("logged_message") as batch_op:
        batch_op.add_column(sa.Column("author_id", sa.Integer(), nullable=True))
        batch_op.create_foreign_key(
            op.f("fk_logged_message_author_id_technician"), "technician", ["author_id"], ["id"], ondelete="SET NULL"
        )
        batch_op.create_index(op.f("ix_logged_message_author_id"), ["author_id"])
