"""Every finding: what it is called in a verdict, what it means for the transformer, and how often it is the fault."""

from dataclasses import dataclass

from core.advice import Transformer
from core.said import Said, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing that can be wrong with the circuit."""

    name: str
    says: Said
    """The verdict line, in the technician's words."""
    transformer: Transformer
    """What it means for the transformer when it is certain."""
    prior: float
    """Share of jobs where this is the fault, before any reading. Common practice, no source: weighed, then kept flat enough
    that two good readings outweigh it."""


FINDINGS: dict[str, Finding] = {
    row.name: row
    for row in (
        Finding(
            name="healthy",
            says=say("The transformer is good, and R–C is fed. Look downstream"),
            transformer="good",
            prior=0.14,
        ),
        Finding(name="no_supply", says=say("No supply: the line side is dead"), transformer="unproven", prior=0.08),
        Finding(name="low_supply", says=say("The supply itself is out of its limits"), transformer="good", prior=0.05),
        Finding(
            name="loose_line",
            says=say("The supply is lost between the disconnect and the primary"),
            transformer="good",
            prior=0.05,
        ),
        Finding(name="wrong_tap", says=say("The tap in use does not match the supply"), transformer="good", prior=0.06),
        Finding(
            name="primary_open",
            says=say("The primary is open"),
            transformer="bad",
            prior=0.12,
        ),
        Finding(
            name="primary_shorted_turns",
            says=say("The primary has shorted turns"),
            transformer="bad",
            prior=0.05,
        ),
        Finding(
            name="secondary_open",
            says=say("The secondary is open"),
            transformer="bad",
            prior=0.07,
        ),
        Finding(
            name="secondary_shorted_turns",
            says=say("The secondary has shorted turns"),
            transformer="bad",
            prior=0.05,
        ),
        Finding(
            name="windings_bridged",
            says=say("Insulation lost between primary and secondary"),
            transformer="bad",
            prior=0.02,
        ),
        Finding(
            name="winding_grounded",
            says=say("A winding has lost its insulation to the core"),
            transformer="bad",
            prior=0.03,
        ),
        Finding(
            name="protection_open",
            says=say("The low-voltage fuse or breaker is open"),
            transformer="good",
            prior=0.09,
        ),
        Finding(name="load_short", says=say("There is a short in the control circuit"), transformer="good", prior=0.07),
        Finding(name="overload", says=say("More load is connected than the rating carries"), transformer="good", prior=0.05),
        Finding(name="control_open", says=say("A break between the secondary and R–C"), transformer="good", prior=0.07),
    )
}
"""All findings by name, in the contract's order."""
