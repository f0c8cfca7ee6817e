"""Volts across a switch are none of the measures: they stay unread in the record and are still heard."""

import pytest

from grammar import read


@pytest.mark.parametrize(
    ("text", "device", "volts"),
    [
        ("got 25.8v across the float switch", "float switch", 25.8),
        ("float switch reads 24", "float switch", 24.0),
        ("0.2 volts across the limit", "limit switch", 0.2),
        ("25.1 v en el presostato", "pressure switch", 25.1),
    ],
)
def test_the_switch_and_its_volts_are_heard(text: str, device: str, volts: float) -> None:
    """Told as unread, by the field's rule, and kept with the name of the switch."""
    message = read(text)

    assert [(h.what, h.part, h.values) for h in message.heard] == [("across", device, (volts,))]
    assert message.unread
    assert not message.readings


@pytest.mark.parametrize("text", ["pri 118 sec 0", "float switch 3 va", "the float is open", "limit is set at 150"])
def test_nothing_else_is_taken_for_volts_across_a_switch(text: str) -> None:
    """A load, a state and a setting are none."""
    assert read(text).heard == ()
