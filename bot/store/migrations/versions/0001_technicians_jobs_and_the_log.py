"""Technicians, jobs and the log."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "technician",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("channel", sa.String(length=40), nullable=False),
        sa.Column("address", sa.String(length=120), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("language", sa.String(length=40), nullable=True),
        sa.Column("keep_days", sa.Integer(), nullable=True),
        sa.Column("joined_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_technician")),
        sa.UniqueConstraint("channel", "address", name=op.f("uq_technician_channel_address")),
        sqlite_autoincrement=True,
    )
    op.create_table(
        "notice",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("technician_id", sa.Integer(), nullable=False),
        sa.Column("template", sa.String(), nullable=False),
        sa.Column("named", sa.JSON(), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["technician_id"], ["technician.id"], name=op.f("fk_notice_technician_id_technician"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_notice")),
    )
    with op.batch_alter_table("notice") as batch_op:
        batch_op.create_index(batch_op.f("ix_notice_technician_id"), ["technician_id"])

    op.create_table(
        "unit",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("owner_id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("called", sa.String(length=80), nullable=False),
        sa.ForeignKeyConstraint(["owner_id"], ["technician.id"], name=op.f("fk_unit_owner_id_technician"), ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_unit")),
        sa.UniqueConstraint("owner_id", "called", name=op.f("uq_unit_owner_id_called")),
    )
    op.create_table(
        "job",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("owner_id", sa.Integer(), nullable=False),
        sa.Column("unit_id", sa.Integer(), nullable=True),
        sa.Column("name", sa.String(length=80), nullable=True),
        sa.Column("channel_job", sa.String(length=120), nullable=True),
        sa.Column("copied_from_id", sa.Integer(), nullable=True),
        sa.Column("opened_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("closed_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("outcome", sa.String(), nullable=True),
        sa.Column("last_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("turns", sa.Integer(), nullable=False),
        sa.Column("finding", sa.String(length=40), nullable=True),
        sa.Column("transformer", sa.String(length=40), nullable=True),
        sa.Column("confidence", sa.Double(), nullable=True),
        sa.Column("settled", sa.Boolean(), nullable=True),
        sa.Column("supply_volts", sa.Double(), nullable=True),
        sa.Column("tap_volts", sa.Double(), nullable=True),
        sa.Column("rated_va", sa.Double(), nullable=True),
        sa.ForeignKeyConstraint(["copied_from_id"], ["job.id"], name=op.f("fk_job_copied_from_id_job"), ondelete="SET NULL"),
        sa.ForeignKeyConstraint(["owner_id"], ["technician.id"], name=op.f("fk_job_owner_id_technician"), ondelete="CASCADE"),
        sa.ForeignKeyConstraint(["unit_id"], ["unit.id"], name=op.f("fk_job_unit_id_unit"), ondelete="SET NULL"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_job")),
        sa.UniqueConstraint("owner_id", "channel_job", name=op.f("uq_job_owner_id_channel_job")),
        sqlite_autoincrement=True,
    )
    with op.batch_alter_table("job") as batch_op:
        batch_op.create_index(batch_op.f("ix_job_copied_from_id"), ["copied_from_id"])
        batch_op.create_index(batch_op.f("ix_job_owner_id_closed_at_last_at"), ["owner_id", "closed_at", "last_at"])
        batch_op.create_index(batch_op.f("ix_job_unit_id"), ["unit_id"])

    op.create_table(
        "attachment",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("technician_id", sa.Integer(), nullable=False),
        sa.Column("message_id", sa.String(length=120), nullable=True),
        sa.Column("kind", sa.String(length=40), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=True),
        sa.Column("media_type", sa.String(length=120), nullable=False),
        sa.Column("caption", sa.String(), nullable=True),
        sa.Column("sha256", sa.String(length=64), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("added_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_attachment_job_id_job"), ondelete="CASCADE"),
        sa.ForeignKeyConstraint(
            ["technician_id"], ["technician.id"], name=op.f("fk_attachment_technician_id_technician"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_attachment")),
        sa.UniqueConstraint("job_id", "sha256", name=op.f("uq_attachment_job_id_sha256")),
    )
    with op.batch_alter_table("attachment") as batch_op:
        batch_op.create_index(batch_op.f("ix_attachment_technician_id"), ["technician_id"])

    op.create_table(
        "guest",
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("technician_id", sa.Integer(), nullable=False),
        sa.Column("since", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_guest_job_id_job"), ondelete="CASCADE"),
        sa.ForeignKeyConstraint(
            ["technician_id"], ["technician.id"], name=op.f("fk_guest_technician_id_technician"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("job_id", "technician_id", name=op.f("pk_guest")),
    )
    with op.batch_alter_table("guest") as batch_op:
        batch_op.create_index(batch_op.f("ix_guest_technician_id"), ["technician_id"])

    op.create_table(
        "hand_over",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(length=40), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("giver_id", sa.Integer(), nullable=False),
        sa.Column("taker_id", sa.Integer(), nullable=True),
        sa.Column("kind", sa.String(length=40), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("ends_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("taken_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(
            ["giver_id"], ["technician.id"], name=op.f("fk_hand_over_giver_id_technician"), ondelete="CASCADE"
        ),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_hand_over_job_id_job"), ondelete="CASCADE"),
        sa.ForeignKeyConstraint(
            ["taker_id"], ["technician.id"], name=op.f("fk_hand_over_taker_id_technician"), ondelete="SET NULL"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_hand_over")),
        sa.UniqueConstraint("code", name=op.f("uq_hand_over_code")),
    )
    with op.batch_alter_table("hand_over") as batch_op:
        batch_op.create_index(batch_op.f("ix_hand_over_giver_id"), ["giver_id"])
        batch_op.create_index(batch_op.f("ix_hand_over_job_id"), ["job_id"])
        batch_op.create_index(batch_op.f("ix_hand_over_taker_id"), ["taker_id"])

    op.create_table(
        "logged_message",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("technician_id", sa.Integer(), nullable=False),
        sa.Column("written_by", sa.String(length=80), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("message_id", sa.String(length=120), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("sent_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_logged_message_job_id_job"), ondelete="CASCADE"),
        sa.ForeignKeyConstraint(
            ["technician_id"], ["technician.id"], name=op.f("fk_logged_message_technician_id_technician"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_logged_message")),
        sa.UniqueConstraint("job_id", "number", name=op.f("uq_logged_message_job_id_number")),
        sa.UniqueConstraint(
            "technician_id", "message_id", "revision", name=op.f("uq_logged_message_technician_id_message_id_revision")
        ),
    )
    op.create_table(
        "working_on",
        sa.Column("technician_id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_working_on_job_id_job"), ondelete="CASCADE"),
        sa.ForeignKeyConstraint(
            ["technician_id"], ["technician.id"], name=op.f("fk_working_on_technician_id_technician"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("technician_id", name=op.f("pk_working_on")),
    )
    with op.batch_alter_table("working_on") as batch_op:
        batch_op.create_index(batch_op.f("ix_working_on_job_id"), ["job_id"])

    op.create_table(
        "logged_reply",
        sa.Column("logged_message_id", sa.Integer(), nullable=False),
        sa.Column("record", sa.JSON(), nullable=False),
        sa.Column("talk", sa.JSON(none_as_null=True), nullable=True),
        sa.Column("document", sa.String(length=40), nullable=True),
        sa.Column("language", sa.String(length=40), nullable=False),
        sa.ForeignKeyConstraint(
            ["logged_message_id"],
            ["logged_message.id"],
            name=op.f("fk_logged_reply_logged_message_id_logged_message"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("logged_message_id", name=op.f("pk_logged_reply")),
    )
