"""What comes in from a messenger and goes out to it, and who may write."""

import sqlalchemy as sa
from alembic import op

BIG = sa.BigInteger().with_variant(sa.Integer(), "sqlite")

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:

    op.create_table(
        "inbox",
        sa.Column("update_id", BIG, autoincrement=False, nullable=False),
        sa.Column("chat_id", BIG, nullable=True),
        sa.Column("body", sa.String(), nullable=True),
        sa.Column("received_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("done_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("failures", sa.Integer(), nullable=False),
        sa.Column("error", sa.String(), nullable=True),
        sa.PrimaryKeyConstraint("update_id", name=op.f("pk_inbox")),
    )
    with op.batch_alter_table("inbox", schema=None) as batch_op:
        batch_op.create_index(
            "ix_inbox_undone",
            ["chat_id", "update_id"],
            unique=False,
            sqlite_where=sa.text("done_at IS NULL"),
            postgresql_where=sa.text("done_at IS NULL"),
        )

    op.create_table(
        "invite",
        sa.Column("code_sha256", sa.String(length=64), nullable=False),
        sa.Column("made_by", BIG, nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("ends_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("used_by", BIG, nullable=True),
        sa.PrimaryKeyConstraint("code_sha256", name=op.f("pk_invite")),
    )
    op.create_table(
        "member",
        sa.Column("user_id", BIG, autoincrement=False, nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("role", sa.String(length=40), nullable=False),
        sa.Column("invited_by", BIG, nullable=True),
        sa.Column("joined_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("removed_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("minute", BIG, nullable=False),
        sa.Column("sent", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("user_id", name=op.f("pk_member")),
    )
    op.create_table(
        "outbox",
        sa.Column("update_id", BIG, autoincrement=False, nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("chat_id", BIG, nullable=False),
        sa.Column("answers", BIG, nullable=True),
        sa.Column("kind", sa.String(length=40), nullable=False),
        sa.Column("body", sa.String(), nullable=True),
        sa.Column("file", sa.LargeBinary(), nullable=True),
        sa.Column("tried", sa.Boolean(), nullable=False),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("due_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("message_id", BIG, nullable=True),
        sa.Column("done_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("error", sa.String(length=120), nullable=True),
        sa.PrimaryKeyConstraint("update_id", "number", name=op.f("pk_outbox")),
    )
    with op.batch_alter_table("outbox", schema=None) as batch_op:
        batch_op.create_index("ix_outbox_answers", ["chat_id", "answers"], unique=False)
        batch_op.create_index(
            "ix_outbox_unsent",
            ["chat_id", "update_id", "number"],
            unique=False,
            sqlite_where=sa.text("done_at IS NULL"),
            postgresql_where=sa.text("done_at IS NULL"),
        )

    op.create_table(
        "question",
        sa.Column("chat_id", BIG, autoincrement=False, nullable=False),
        sa.Column("user_id", BIG, autoincrement=False, nullable=False),
        sa.Column("update_id", BIG, nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("labels", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("chat_id", "user_id", name=op.f("pk_question")),
    )
    op.create_table(
        "stranger",
        sa.Column("user_id", BIG, autoincrement=False, nullable=False),
        sa.Column("told_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("tries", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("user_id", name=op.f("pk_stranger")),
    )
