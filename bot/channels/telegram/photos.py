"""Photos that technicians send: fetched with a limit, looked at no further than their head, and kept as they are."""

import io
import warnings
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy.orm import Session
from telegram import Bot
from telegram.error import TelegramError

from bot.channels.telegram import talk
from bot.channels.telegram.arrival import Arrival, Photo
from bot.desk import in_hand
from bot.store.attachments import File, attach
from bot.store.jobs import open_job
from bot.store.tables import Job
from bot.store.technicians import welcome
from core.said import Said, say

LIMIT_MB = 10
LIMIT = LIMIT_MB * 1_000_000
"""Larger files are not fetched. [bytes]"""
LARGEST = 50_000_000
"""A picture of more is taken for a trap: it is small to send and fills the memory of whoever opens it. [pixels]"""
FORMATS = {"JPEG": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp"}
TRIES = 3
FETCH_TIMEOUT_S = 30.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fetched:
    """A photo, or why there is none."""

    body: bytes = b""
    media_type: str = ""
    trouble: Said | None = None


async def fetch(bot: Bot, photo: Photo) -> Fetched:
    """The photo, if it can be fetched and is one."""
    too_big = Fetched(trouble=Said(talk.ONLY_PHOTOS.template, (("limit", LIMIT_MB),)))
    if (photo.bytes_long or 0) > LIMIT:
        return too_big
    for _ in range(TRIES):
        try:
            file = await bot.get_file(photo.file_id)
            if (file.file_size or 0) > LIMIT:
                return too_big
            body = bytes(await file.download_as_bytearray(read_timeout=FETCH_TIMEOUT_S))
        except TelegramError:
            continue
        media_type = kind_of(body) if len(body) <= LIMIT else None
        return too_big if media_type is None else Fetched(body=body, media_type=media_type)
    return Fetched(trouble=talk.PHOTO_NOT_FETCHED)


def kind_of(body: bytes) -> str | None:
    """The media type of a photo, from its head alone: no pixel is unpacked. None where it is none, or a trap."""
    from PIL import Image  # noqa: PLC0415  (only where a photo came)

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            head = Image.open(io.BytesIO(body), formats=tuple(FORMATS))
    except Exception:  # noqa: BLE001  (a file made to break a reader breaks it in any way)
        return None
    return FORMATS[head.format or ""] if 0 < head.width * head.height <= LARGEST else None


def keep(session: Session, arrival: Arrival, fetched: Fetched, now: datetime) -> Said:
    """Put a photo to the technician's job; what to say about it."""
    technician = welcome(session, "telegram", arrival.address, arrival.name, now)
    job = in_hand(session, technician, now) or open_job(session, technician, now)
    file = File(
        kind="photo",
        media_type=fetched.media_type,
        body=fetched.body,
        caption=arrival.text or None,
        message_id=str(arrival.message_id),
    )
    attach(session, technician, job, file, now)
    return say("Photo kept with {job}. It is not read: type the readings", job=_called(job))


def _called(job: Job) -> str | Said:
    return job.name or talk.THIS_JOB
