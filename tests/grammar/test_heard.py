"""What is no measure and still decides the call: it stays unread in the record, and is heard."""

import pytest

from core.heard.record import HEARD
from grammar import Context, read
from grammar.words.heard import BREAKER_OFF, CONTACTOR


def heard(text: str) -> list[tuple]:
    """What was heard in a text: what, of which part, its values, their unit."""
    return [(h.what, h.part, h.values, h.unit) for h in read(text).heard]


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

    assert heard(text) == [("across", device, (volts,), "V")]
    assert message.unread
    assert not message.readings


@pytest.mark.parametrize(
    ("text", "part", "fed", "other"),
    [
        ("26 on one side of float sw 0 on the other", "float switch", 26.0, 0.0),
        ("24v into float switch, nothing out of it", "float switch", 24.0, 0.0),
        ("26 in to the float 0 out", "float switch", 26.0, 0.0),
        ("float switch: 24 in, 0 out", "float switch", 24.0, 0.0),
        ("float tripped, 24 in and nothing out", "float switch", 24.0, 0.0),
        ("i got 24 going in the float switch but zero coming out", "float switch", 24.0, 0.0),
        ("24v up to the float switch, zero past it", "float switch", 24.0, 0.0),
        ("26.4 on the R side of the limit, 0 on the other", "limit switch", 26.4, 0.0),
        ("25 on the line side of the float and 0 on the load side", "float switch", 25.0, 0.0),
        ("24 in the fuse 0 out", "fuse", 24.0, 0.0),
        ("26v before the fuse 0 after", "fuse", 26.0, 0.0),
        ("26 before the fuse, 25.8 after the fuse", "fuse", 26.0, 25.8),
        ("26v going to the fuse and 26 leaving it", "fuse", 26.0, 26.0),
        ("24 both sides of the limit", "limit switch", 24.0, 24.0),
        ("pressure switch has 24v on both sides", "pressure switch", 24.0, 24.0),
        ("24 in and 0 out of the high limit", "limit switch", 24.0, 0.0),
        ("nothing on either side of the fuse", "fuse", 0.0, 0.0),
        ("24v into the float switch", "float switch", 24.0, None),
        ("26 after the fuse", "fuse", None, 26.0),
        ("0 out of the float switch", "float switch", None, 0.0),
        ("le entran 24 al flotador y no sale nada", "float switch", 24.0, 0.0),
        ("24 de un lado del flotador y 0 del otro", "float switch", 24.0, 0.0),
        ("24 en los dos lados del limite", "limit switch", 24.0, 24.0),
        ("entran 26 al fusible y sale 0", "fuse", 26.0, 0.0),
        ("24v antes del presostato y 0 despues", "pressure switch", 24.0, 0.0),
        ("entran 24v al limite pero no sale voltaje", "limit switch", 24.0, 0.0),
    ],
)
def test_both_sides_of_a_part_are_its_own(text: str, part: str, fed: float, other: float) -> None:
    """In and out of a switch or fuse are no windings, and no volts across the fuse."""
    message = read(text)

    assert heard(text) == [("sides", part, (fed, other), "V")]
    assert (message.readings, message.unclear) == ((), ())


@pytest.mark.parametrize(
    ("text", "measures"),
    [
        ("sec 26, 26 in the float 0 out", {"secondary_volts": 26.0}),
        ("26 in 0 out at the float, sec 26", {"secondary_volts": 26.0}),
    ],
)
def test_a_place_beside_a_part_keeps_its_value(text: str, measures: dict) -> None:
    """What is read at the secondary in the same message stays there."""
    assert heard(text) == [("sides", "float switch", (26.0, 0.0), "V")]
    assert {r.measure: r.value for r in read(text).readings} == measures


@pytest.mark.parametrize(
    ("text", "values", "unit"),
    [
        ("pri fuses, one is OL", ("open",), "ohm"),
        ("primary fuse is blown", (), ""),
        ("line fuse L2 OL", ("open",), "ohm"),
        ("L1 fuse is blown", (), ""),
        ("480v fuse is OL", ("open",), "ohm"),
        ("fuse on the primary is blown", (), ""),
        ("the fuse on the 480 side is open", ("open",), "ohm"),
        ("ac fuse blown at disconnect", (), ""),
        ("blew the primary fuse", (), ""),
        ("line fuse 0.2 ohms", (0.2,), "ohm"),
        ("240 across the primary fuse", (240.0,), "V"),
        ("240 in the line fuse 0 out", (240.0, 0.0), "V"),
        ("240 one side of the line fuse, 0 other side", (240.0, 0.0), "V"),
        ("fusible de linea abierto", ("open",), "ohm"),
        ("fusible de linea L2 abierto", ("open",), "ohm"),
        ("se volo el fusible del primario", (), ""),
        ("fusibles del desconectador, uno abierto", ("open",), "ohm"),
    ],
)
def test_a_line_fuse_is_not_the_fuse_of_the_controls(text: str, values: tuple, unit: str) -> None:
    """Neither its ohms, nor its volts, nor that it is blown are told of the 24 V fuse."""
    message = read(text)

    assert heard(text) == [("line_fuse", "fuse", values, unit)]
    assert message.readings == ()
    assert "blown_fuse" not in {fact.value for fact in message.facts}


@pytest.mark.parametrize(
    ("text", "part", "values", "unit"),
    [
        ("y to c 22 ohms", "y c", (22.0,), "ohm"),
        ("wiggled it, y to c dropped to 0.4", "y c", (0.4,), "ohm"),
        ("y to c at the condenser 0.3", "y c", (0.3,), "ohm"),
        ("y to c jumps between 0.4 and 22 ohms", "y c", (0.4,), "ohm"),
        ("y1 to c 0.4 ohms", "y1 c", (0.4,), "ohm"),
        ("ohmed y to c 22", "y c", (22.0,), "ohm"),
        ("y to c 22", "y c", (22.0,), ""),
        ("y-c 26v", "y c", (26.0,), "V"),
        ("no voltage y to c", "y c", (0.0,), "V"),
        ("Y to C at the air handler is 24.6, at the condenser 0", "y c", (24.6, 0.0), "V"),
        ("y-c 26v at the board, 0 at the condenser", "y c", (26.0, 0.0), "V"),
        ("o to c OL", "o c", ("open",), "ohm"),
        ("r wire to ground 0.2 ohms", "r ground", (0.2,), "ohm"),
        ("lifted r at both ends, r to case OL", "r ground", ("open",), "ohm"),
        ("c to ground 0.2 ohms power off", "c ground", (0.2,), "ohm"),
        ("y to g 0.3", "y g", (0.3,), "ohm"),
        ("24v between R and G", "g r", (24.0,), "V"),
        ("y a c 22 ohms", "y c", (22.0,), "ohm"),
        ("cable r a tierra 0.2 ohms", "r ground", (0.2,), "ohm"),
        ("c a tierra 0.2 ohms", "c ground", (0.2,), "ohm"),
    ],
)
def test_terminals_are_legs_of_the_control_circuit(text: str, part: str, values: tuple, unit: str) -> None:
    """Letters of a thermostat are no leads of a transformer."""
    message = read(text)

    assert heard(text) == [("leg", part, values, unit)]
    assert message.readings == ()
    assert message.unread


@pytest.mark.parametrize(
    ("text", "leg", "value"),
    [
        ("lifted Y at the board, now 22 ohms", "y", 22.0),
        ("lifted the y wire at the board and r-c went to 22 ohms", "y", 22.0),
        ("with g disconnected r-c still 0.4 ohms", "g", 0.4),
        ("lifted w, still 0.4 ohms", "w", 0.4),
        ("solté la Y, ahora 22 ohms", "y", 22.0),
    ],
)
def test_a_leg_that_is_lifted_tells_where_a_short_is(text: str, leg: str, value: float) -> None:
    """With the value that is left."""
    assert heard(text) == [("leg_lifted", leg, (value,), "ohm")]


@pytest.mark.parametrize(
    ("text", "leg"),
    [
        ("with cooling call r-c 0.6", "y"),
        ("r-c 0.5 with a call for heat", "w"),
        ("con llamada de frio r-c 0.6 ohms", "y"),
    ],
)
def test_a_short_with_a_call_stays_a_reading_of_r_to_c(text: str, leg: str) -> None:
    """And the call names the leg."""
    assert [(what, part) for what, part, _, _ in heard(text)] == [("call", leg)]
    assert [r.measure for r in read(text).readings] == ["load_ohms"]


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("coil 25v, contactor wont pull in", "stays_out"),
        ("23v at the contactor coil and it's not pulling in", "stays_out"),
        ("coil has 24 but no click", "no_click"),
        ("24v at coil, fan dead", "motor_dead"),
        ("condenser fan not running, 24v at coil", "motor_dead"),
        ("contactor con 24 volts y no pega", "stays_out"),
        ("24 en la bobina, el abanico no prende", "motor_dead"),
    ],
)
def test_what_contactor_and_motor_do_is_heard_beside_the_coil(text: str, what: str) -> None:
    """The volts at the coil stay a reading."""
    assert [row[0] for row in heard(text)] == [what]
    assert [r.measure for r in read(text).readings] == ["coil_volts"]


@pytest.mark.parametrize(
    "text",
    [
        "breaker was off. now 121",
        "someone shut the breaker off, back on now pri 121v sec 26v",
        "disconnect was off, now line is 241",
        "found the disconnect pulled",
        "el breaker estaba apagado. ahora 121",
        "alguien apagó el breaker, ya hay 240 en la linea",
    ],
)
def test_a_breaker_found_off_is_none_that_trips(text: str) -> None:
    """Somebody turned it off."""
    message = read(text)

    assert [row[0] for row in heard(text)] == ["breaker_off"]
    assert "trips_breaker" not in {fact.value for fact in message.facts}


def test_bare_volts_beside_a_breaker_are_the_lines_as_a_guess() -> None:
    """Taken, and marked as assumed."""
    (reading,) = read("breaker was off. now 121").readings

    assert (reading.measure, reading.value, reading.assumed) == ("line_volts", 121.0, True)


@pytest.mark.parametrize(
    "text",
    [
        "pri 118 sec 0", "float switch 3 va", "limit is set at 150", "120 in 0 out", "120 in 24 out, fuse good",
        "checked the float in the pan, sec 26v out", "float switch is in the pan, 24v at the board",
        "pri 120 in, sec 24 out, limit ok", "fuse OL", "24v fuse OL", "control fuse blown", "fuse blown", "line 120, fuse OL",
        "what primary fuse for a 40 VA on a 480 supply", "primary fuse good", "primary fuse isnt blown", "5 amp line fuse",
        "w-b 5.0 w-r 8.8 w-o 10.3 all ohms", "y-b 1.1 ohms", "red to ground 0.2 ohms", "white to ground OL", "w to g OL",
        "transformer leads y to g 1.1 ohms", "compressor C to R 1.6 ohms, C to S 4.2 ohms", "a to c 3.3 ohms, b to c 3.2",
        "h1 to ground OL, x1 to ground 0.2", "can i jump r to y", "is y to c supposed to be 24v", "r-c 0.4 ohms",
        "lifted R, sec 26", "took the o wire off", "contactor pulls in at 24.1v on the coil", "fan not running", "breaker off",
        "breaker is off, ohms pri 20 sec 1", "breaker was off, turned it on and it tripped", "breaker keeps going off",
        "customer turned the thermostat off", "the float tripped because of algae so i flushed it, back to 24.8",
        "el fusible de 24 abierto", "breaker bajado, ohms primario 20",
    ],
)  # fmt: skip
def test_nothing_else_is_taken_for_it(text: str) -> None:
    """Loads, states, settings, windings, leads, sizes and questions are none."""
    assert heard(text) == []


def test_letters_stay_leads_while_leads_are_told_apart() -> None:
    """After a test between two leads was asked for, Y and G are colours."""
    message = read("y to g 0.3 ohms", Context(asked=("lead_ohms", ("yellow", "green"))))

    assert [r.leads for r in message.readings] == [("yellow", "green")]


def test_every_turn_of_phrase_means_something_that_has_an_answer() -> None:
    """Meanings are names of the record."""
    assert {cue.meaning for cue in (*CONTACTOR, *BREAKER_OFF)} <= set(HEARD)
