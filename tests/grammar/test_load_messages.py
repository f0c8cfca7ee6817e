"""Loads, as they are told at the counter: devices, figures, counts, and what they take while they pull in."""

import pytest

from grammar import read
from tests.grammar.told import told


@pytest.mark.parametrize(
    ("text", "devices"),
    [
        ("need va for 2 contactors 9va, gas valve half amp, board", {"contactor": 9.0, "gas valve": 0.5, "board": None}),
        ("contactor 9va, a stat and 2 relays, what size", {"contactor": 9.0, "thermostat": None, "relay": None}),
        ("150 ft of 18/5 to the stat and the gas valve draws .4 amp", {"gas valve": 0.4}),
        ("stat is blank, contactor wont pull in", {}),
    ],
)
def test_a_device_alone_in_a_list_of_loads_is_a_load_without_a_figure(text: str, devices: dict[str, float | None]) -> None:
    """Its label is asked for; elsewhere it is no load."""
    assert {str(f.device): f.value for f in read(text).facts if f.fact == "load"} == devices


@pytest.mark.parametrize(
    ("text", "device", "value", "unit"),
    [
        ("82 va load", "load", 82.0, "VA"),
        ("load is 62 va what size", "load", 62.0, "VA"),
        ("total is 110 va what do i buy", "load", 110.0, "VA"),
        ("voltage drop 200 ft 20 awg 1 amp", "load", 1.0, "A"),
        ("humidifier 10w on a 40va", "humidifier", 10.0, "VA"),
        ("5 zone valves .3a each, one 24v 40va tranny enough?", "zone valve", 0.3, "A"),
        ("contactor 8va, defrost 5 va", "defrost board", 5.0, "VA"),
    ],
)
def test_a_load_is_read_as_it_is_told(text: str, device: str, value: float, unit: str) -> None:
    """Sums, amps at the end of a wire, watts, and words that are a device only before VA."""
    assert (device, value, unit) in [(f.device, f.value, f.unit) for f in read(text).facts if f.fact == "load"]


@pytest.mark.parametrize(
    ("text", "count"), [("99 contactors at 9va", 99), ("1000 contactors 9va", 1000), ("20 awg to 2 contactors 9va", 2)]
)
def test_a_count_is_that_of_the_device(text: str, count: int) -> None:
    """Past sense too: core says what is wrong with it."""
    assert [f.count for f in read(text).facts if f.fact == "load"] == [count]


@pytest.mark.parametrize(
    ("text", "loads", "rated"),
    [
        ("is 40va enough for a contactor 10va and a gas valve 12va", [("contactor", 1, 10.0), ("gas valve", 1, 12.0)], [40.0]),
        ("will a 40 va handle 5 zone valves at 7 va", [("zone valve", 5, 7.0)], [40.0]),
        ("contactor 9 va x 2, gas valve 0.5 amp", [("contactor", 2, 9.0), ("gas valve", 1, 0.5)], []),
        ("100 ft to 10va contactor, 250 ft to 6 va relay", [("contactor", 1, 10.0), ("relay", 1, 6.0)], []),
        ("plus 5 va for the stat", [("thermostat", 1, 5.0)], []),
        ("40va, zone board 6 valves 9va each", [("zone valve", 6, 9.0)], [40.0]),
        ("40va zone board with 6 valves 9va each", [("zone valve", 6, 9.0)], [40.0]),
        ("6 zone valves, 40va", [("zone valve", 6, None)], [40.0]),
        ("economizer actuator added 12va to 40va", [("economizer", 1, 12.0)], [40.0]),
        ("40va, need 3 zone valves and a 24v damper 8va", [("zone valve", 3, None), ("damper", 1, 8.0)], [40.0]),
        ("contactor 9va inrush 60, relay 3va", [("contactor", 1, 9.0), ("relay", 1, 3.0)], []),
    ],
)
def test_each_figure_goes_to_its_own_device(text: str, loads: list[tuple[str, int, float | None]], rated: list[float]) -> None:
    """Not to the next one, and no run leads to a range."""
    message = read(text)

    assert [(f.device, f.count, f.value) for f in message.facts if f.fact == "load"] == loads
    assert told(message, "rated_va") == rated


@pytest.mark.parametrize(
    ("text", "loads"),
    [
        ("two contactors", [("contactor", 2)]),
        ("dos contactores", [("contactor", 2)]),
        ("both contactors", [("contactor", 2)]),
        ("board, contactor, stat", [("board", 1), ("contactor", 1), ("thermostat", 1)]),
        ("contactor 24v coil", [("contactor", 1)]),
        ("contactor with a 24v coil", [("contactor", 1)]),
        ("2 24v contactors", [("contactor", 2)]),
        ("contactor", []),
        ("contactor coil 24v", []),
        ("24v at the contactor coil", []),
    ],
)
def test_bare_devices_are_loads_and_a_reading_stays_one(text: str, loads: list[tuple[str, int]]) -> None:
    """Counted or listed, or told by the nominal volts of their coil; one device by itself may be anything."""
    told = [(f.device, f.count) for f in read(text).facts if f.fact == "load"]

    assert told == loads


@pytest.mark.parametrize(
    ("text", "sealed", "inrush"),
    [
        ("contactor sealed 9va inrush 72va", 9.0, 72.0),
        ("contactor inrush 60va sealed 9va", 9.0, 60.0),
        ("inrush 60 sealed 9 contactor", 9.0, 60.0),
        ("contactor 9 sealed 60 inrush", 9.0, 60.0),
        ("contactor: 72 inrush, 9 sealed", 9.0, 72.0),
        ("contactor holds 9va and pulls in at 60va", 9.0, 60.0),
        ("what size for contactor inrush 9 sealed 60", 60.0, 9.0),
    ],
)
def test_sealed_and_inrush_go_to_the_word_they_stand_at(text: str, sealed: float, inrush: float) -> None:
    """Before it or behind it, as the first of them shows; core asks about an inrush below the sealed."""
    (load,) = (f for f in read(text).facts if f.fact == "load")

    assert (load.value, load.inrush) == (sealed, inrush)


@pytest.mark.parametrize("text", ["relay 4va, contactor 9va inrush 60", "contactor 9va sealed, 60va inrush, relay 4va"])
def test_an_inrush_is_of_one_device(text: str) -> None:
    """The contactor's."""
    told = {f.device: f.inrush for f in read(text).facts if f.fact == "load"}

    assert told == {"contactor": 60.0, "relay": None}


@pytest.mark.parametrize(
    ("text", "unknown"),
    [
        ("a whatchamacallit", ("whatchamacallit",)),
        ("need va for a whatchamacallit", ("whatchamacallit",)),
        ("need va for 2 contactors 9va and a whatchamacallit", ("whatchamacallit",)),
        ("what size for 2 contactors 9va and 3 gizmos 4va", ("3 gizmos 4va",)),
        ("what size for a toaster 1200 watts", ("toaster 1200 watts",)),
        ("2 contactors 9va, what size, customer is angry", ()),
        ("2 contactors 9va what size", ()),
    ],
)
def test_what_stands_for_a_device_and_is_none_is_kept_and_makes_no_load(text: str, unknown: tuple[str, ...]) -> None:
    """Nothing of it is dropped in silence, and no number comes of it."""
    message = read(text)

    assert message.unknown_loads == unknown
    assert set(unknown) <= set(message.unread)


@pytest.mark.parametrize(
    "text", ["3 flux dampers at 4 va", "3 new dampers 4va", "3 24v dampers 4va", "3 more dampers 4 va each"]
)
def test_a_count_reaches_over_a_word_that_describes(text: str) -> None:
    """Three of them."""
    assert [(f.device, f.count, f.value) for f in read(text).facts] == [("damper", 3, 4.0)]


@pytest.mark.parametrize(
    ("text", "loads", "rated"),
    [
        ("150 ft of 18 with 20 va", [20.0], None),
        ("30 m de cable 18 con 20 va, cuanto pierdo", [20.0], None),
        ("20 va on 150 ft of 18", [20.0], None),
        ("40va, 120 ft of 18", [], 40.0),
        ("40 va transformer, 120 ft of 18 with 20 va", [20.0], 40.0),
        ("load is 140va can i use a 150va transformer", [140.0], 150.0),
        ("what transformer for a 24v 50va load", [50.0], None),
    ],
)
def test_va_are_of_the_load_or_of_the_transformer(text: str, loads: list[float], rated: float | None) -> None:
    """What a wire feeds is a load; a word for the transformer beside the figure makes it the rating."""
    facts = read(text).facts

    assert [f.value for f in facts if f.fact == "load"] == loads
    assert next((f.value for f in facts if f.fact == "rated_va"), None) == rated


@pytest.mark.parametrize(
    "text", ["2 contactors, gas valve, board, stat what size, no labels", "contactor, board and stat de cuantos va"]
)
def test_the_last_device_before_a_question_is_a_load_too(text: str) -> None:
    """None is dropped in silence."""
    assert "thermostat" in [f.device for f in read(text).facts]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("contactor 9va x2", 2),
        ("contactor 9va ×2 what size", 2),
        ("contactor x2 9va", 2),
        ("2x contactor 9va", 2),
        ("9va contactor x3", 3),
        ("a dozen dampers 4 va each", 12),
        ("half a dozen dampers 4va", 6),
        ("two dozen relays 3va", 24),
        ("una docena de valvulas de zona 6va", 12),
        ("media docena de relevadores 4 va", 6),
        ("contactor 9va, contactor 9va", 2),
        ("a dozen contactors", 12),
    ],
)
def test_however_many_are_told_all_of_them_count(text: str, count: int) -> None:
    """With the sign for times, by the dozen, or one by one."""
    (load,) = (f for f in read(text).facts if f.fact == "load")

    assert load.count == count


def test_amps_of_a_pull_in_become_volt_amperes() -> None:
    """2.5 A at 24 V."""
    (load,) = (f for f in read("contactor pulls .38 amps sealed and 2.5 amps inrush").facts if f.fact == "load")

    assert (load.value, load.unit, load.inrush) == (0.38, "A", 60.0)


@pytest.mark.parametrize(
    "text",
    ["gas valve 24v .35 amp, board 0.3 amp, what va", "transformer for 30va load, 24v, supply 277", "contactor 9va, 24v"],
)
def test_nominal_volts_beside_loads_leave_nothing_unread(text: str) -> None:
    """They are what the device or the transformer is made for, and no reading."""
    message = read(text)

    assert message.unread == ()
    assert message.readings == ()


def test_each_speaks_of_the_devices_before_it() -> None:
    """A figure for each of them is no second rating."""
    message = read("6 zone valves, 40va, each is 7va")

    assert told(message, "rated_va") == [40.0]
    assert [(f.device, f.count, f.value) for f in message.facts if f.fact == "load"] == [("zone valve", 6, 7.0)]


@pytest.mark.parametrize(
    "text",
    [
        "contactor 9va, gas valve 12va, never at the same time",
        "gas valve 20va, contactor 9va, nunca al mismo tiempo",
        "they dont run together",
    ],
)
def test_loads_that_never_run_together_are_told(text: str) -> None:
    """In both languages."""
    assert "apart" in read(text).topics
