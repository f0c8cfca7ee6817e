"""What is no measure and still decides the call: sides of a switch or fuse, line fuses, legs, and what is told of contactor and breaker."""

from grammar.binding.draft import Draft
from grammar.binding.heard.holds import holds
from grammar.binding.heard.legs import legs
from grammar.binding.heard.lifted_wires import lifted_wires
from grammar.binding.heard.line_fuses import line_fuses
from grammar.binding.heard.sides import sides
from grammar.binding.heard.switches import switches
from grammar.binding.heard.turns import told


def hear(draft: Draft) -> None:
    """All of it; what it takes is nothing else."""
    sides(draft)
    switches(draft)
    line_fuses(draft)
    told(draft)
    holds(draft)
    lifted_wires(draft)
    legs(draft)
