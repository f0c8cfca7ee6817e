"""Sizing: what to buy, how to fuse and wire it, and the proof that it holds."""

from core.sizing.answer import size
from core.sizing.proof import has_failed, prove

__all__ = ["has_failed", "prove", "size"]
