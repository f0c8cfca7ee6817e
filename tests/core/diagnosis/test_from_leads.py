"""Ohms between named leads, where it is told what the leads are."""

import pytest

from core.diagnosis import diagnose
from core.diagnosis.from_leads import of_windings
from core.readings import Fact, Job, Reading

ROLES = {"white": "common", "black": "120", "red": "208", "orange": "240", "blue": "secondary", "yellow": "secondary"}


def job(*pairs: tuple[str, str, float | str], tap: str | None = None) -> Job:
    """A job of pairs of leads."""
    facts = [Fact(fact="lead_is", lead=lead, role=role) for lead, role in ROLES.items()]
    facts += [Fact(fact="tap_lead", value=tap)] if tap else []
    readings = tuple(Reading(measure="lead_ohms", value=ohms, leads=(a, b)) for a, b, ohms in pairs)
    return Job(readings=readings, facts=tuple(facts))


@pytest.mark.parametrize(
    ("pair", "measure"),
    [
        (("blue", "yellow", 1.1), "secondary_ohms"), (("white", "yellow", "open"), "primary_secondary_ohms"), (("black", "ground", 3.0), "primary_ground_ohms"),
        (("ground", "blue", 0.4), "secondary_ground_ohms"), (("white", "red", "open"), "primary_ohms"), (("black", "red", "open"), "primary_ohms"),
    ],
)  # fmt: skip
def test_a_pair_is_a_reading_of_its_winding(pair: tuple[str, str, float | str], measure: str) -> None:
    """By what the leads are."""
    assert [r.measure for r in of_windings(job(pair))] == [measure]


def test_only_the_pair_in_use_has_the_ohms_of_the_primary() -> None:
    """Another tap has others."""
    assert of_windings(job(("white", "black", 19.8), tap="black"))[0].value == 19.8
    assert of_windings(job(("white", "orange", 74.0), tap="black")) == ()
    assert of_windings(job(("black", "red", 11.0), tap="black")) == ()


def test_leads_that_nobody_named_say_nothing() -> None:
    """They belong to the map of leads."""
    assert of_windings(Job(readings=(Reading(measure="lead_ohms", value=20.0, leads=("white", "black")),))) == ()


def test_a_primary_whose_pairs_are_all_open_is_open() -> None:
    """The diagnosis says so as if the winding had been read."""
    leads = job(("white", "black", "open"), ("white", "red", "open"), ("black", "red", "open"))
    dead = (Reading(measure="primary_volts", value=119.0), Reading(measure="secondary_volts", value=0.0))
    verdict = diagnose(Job(readings=(*dead, *leads.readings), facts=leads.facts)).verdict

    assert verdict is not None
    assert verdict.finding == "primary_open"
    assert verdict.transformer == "bad"
