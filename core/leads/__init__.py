"""Which lead is which, which tap to land, how big an unmarked unit is."""

from core.leads.answer import map_leads
from core.leads.choose_tap import choose_tap
from core.leads.estimate_va import estimate_va
from core.leads.step_down import step_down

__all__ = ["choose_tap", "estimate_va", "map_leads", "step_down"]
