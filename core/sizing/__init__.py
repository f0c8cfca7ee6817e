"""Sizing: what to buy, how to fuse and wire it, and the proof that it holds."""

from core.sizing.answer import size
from core.sizing.proof import prove

__all__ = ["prove", "size"]
