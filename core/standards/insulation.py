"""Insulation tests of control wiring."""

from typing import Final

from core.standards.source import Source

WIRING: Final = Source("ANSI/NETA", "switchgear section, control wiring")
"""Control wiring is tested at 500 V DC (300 V cable) or 1000 V DC (600 V cable), solid-state parts disconnected first."""
