"""What sizing needs of a text beside readings and loads: gauges and runs, units and their supplies, fuses, proofs, what a question is narrowed down to."""

import pytest

from core.readings import Fact
from grammar import Context, read
from tests.grammar.told import told


@pytest.mark.parametrize(
    ("text", "feet", "awg"),
    [
        ("need va for 2 contactors 9va, gas valve half amp, board, 120 ft of 18", 120, 18),
        ("how much do i lose on 150 ft of 18 with 20 va", 150, 18),
        ("cuanto pierdo en 150 pies de 18 con 20 va", 150, 18),
        ("60 ft of stat wire 20, contactor 9 va", 60, 20),
    ],
)
def test_a_bare_number_behind_a_length_is_its_gauge(text: str, feet: float, awg: float) -> None:
    """In "120 ft of 18"."""
    message = read(text)

    assert (told(message, "run_feet"), told(message, "wire_awg")) == ([feet], [awg])
    assert message.unread == ()


@pytest.mark.parametrize("text", ["ran 60 feet in 20 minutes", "run 50 ft of wire, 18 volts at the stat", "120 ft of 30 va"])
def test_what_has_a_unit_of_its_own_is_no_gauge(text: str) -> None:
    """Minutes, volts, volt-amperes."""
    assert told(read(text), "wire_awg") == []


@pytest.mark.parametrize(
    ("text", "runs"),
    [
        (
            "two runs: 60 ft of 18 to contactor 9va and 180 ft of 20 to damper 6va",
            [
                ("run_feet", 60, 1),
                ("wire_awg", 18, 1),
                ("load", 9, 1),
                ("run_feet", 180, 2),
                ("wire_awg", 20, 2),
                ("load", 6, 2),
            ],
        ),
        (
            "contactor 9va 60 ft 18 awg, damper 6 va 180 ft 20 awg",
            [
                ("load", 9, 1),
                ("run_feet", 60, 1),
                ("wire_awg", 18, 1),
                ("load", 6, 2),
                ("run_feet", 180, 2),
                ("wire_awg", 20, 2),
            ],
        ),
        ("100 ft of 18 to contactor 9va", [("run_feet", 100, None), ("wire_awg", 18, None), ("load", 9, None)]),
    ],
)
def test_gauges_and_loads_belong_to_their_run(text: str, runs: list[tuple[str, float, int | None]]) -> None:
    """Whichever way round it is told."""
    assert [(f.fact, f.value, f.run) for f in read(text).facts] == runs


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("what primary fuse for a 40 VA on a 480 supply", "line_fuse"),
        ("what fuse on the line side for 40va 120v", "line_fuse"),
        ("que fusible del primario para 40 va", "line_fuse"),
        ("what size secondary fuse", "low_fuse"),
        ("replace 208/240 with multi tap", "multi_tap"),
        ("60 hz transformer on 50 hz ok?", "unit_60_hertz"),
        ("can i use a 50hz transformer on 60hz", "unit_50_hertz"),
        ("3 zone valves 8va on the same common, 200 ft of 18", "shared_common"),
    ],
)
def test_a_question_is_narrowed_down(text: str, topic: str) -> None:
    """By a turn of phrase."""
    assert topic in read(text).topics


@pytest.mark.parametrize("text", ["what fuse for 40 va, 208 supply", "is a 3 amp fuse ok", "fuse blown, pri 120"])
def test_a_fuse_with_no_side_said_has_no_side(text: str) -> None:
    """Both are answered."""
    assert read(text).topics == ()


@pytest.mark.parametrize(
    ("text", "there", "meant"),
    [
        ("can i put a 75 va in the same box as the 40", 40, 75),
        ("higher va in same box, 40 to 75, ok?", 40, 75),
        ("swap the 75 for a 40va?", 75, 40),
        ("puedo poner uno de 75 va en la misma caja que el de 40", 40, 75),
        ("can i use a 75va instead of the 40va", 40, 75),
    ],
)
def test_of_two_sizes_one_is_there_and_one_is_meant(text: str, there: float, meant: float) -> None:
    """Nothing of it is left unread."""
    message = read(text)

    assert (told(message, "rated_va"), message.meant_va) == ([there], meant)
    assert message.unread == ()


def test_the_size_that_is_there_may_have_been_told_before() -> None:
    """40 VA told, then "can i put a 75va in its place"."""
    known = Context(facts=(Fact(fact="rated_va", value=40.0, unit="VA"),))
    message = read("can i put a 75va in the same spot", known)

    assert (told(message, "rated_va"), message.meant_va) == ([], 75.0)


@pytest.mark.parametrize(
    ("text", "supply"),
    [
        ("4 zone valves 8 va, boiler relay 5va, 120v", 120),
        ("cuantos va para 3 valvulas de zona 8va, 208", 208),
        ("0.5 amp fuse on the 480 side of a 50va ok?", 480),
        ("what time delay fuse 50va 480", 480),
        ("fusible del primario para 50va en 480", 480),
    ],
)
def test_the_one_nominal_voltage_of_a_sizing_is_the_supply(text: str, supply: float) -> None:
    """Behind a list of loads, or at the line side of a fuse."""
    message = read(text)

    assert told(message, "supply_volts") == [supply]
    assert message.readings == ()


@pytest.mark.parametrize("text", ["0 awg 100 ft", "100 ft of 40 awg", "contactor 0 va", "contactor 5000 va"])
def test_nonsense_is_told_to_core_that_refuses_it(text: str) -> None:
    """Never dropped, never a number from it."""
    assert read(text).facts


@pytest.mark.parametrize(
    ("text", "tap", "supply"),
    [
        ("120 to 24 40va, supply is 240 can i use it", 120.0, 240.0),
        ("277v unit on 240 ok?", 277.0, 240.0),
        ("277v transformer on 240 ok?", 277.0, 240.0),
        ("480 to 24 transformer on 240 supply what comes out", 480.0, 240.0),
        ("40va with 120 primary, supply is 208", 120.0, 208.0),
        ("120/24 40va transformer on 208", 120.0, 208.0),
        ("40va 120v transformer, 240 supply", 120.0, 240.0),
        ("transformer is a 240 and building has 208", 240.0, 208.0),
        ("transformador de 120 en 208, sirve?", 120.0, 208.0),
        ("need a transformer for 480", None, 480.0),
        ("transformer for a 208 building", None, 208.0),
        ("40va with 120 primary", None, 120.0),
        ("new transformer is 40va on 208", None, 208.0),
    ],
)
def test_what_a_unit_is_made_for_is_no_second_supply(text: str, tap: float | None, supply: float) -> None:
    """Two nominal voltages are that of the primary in use and that of the building; one alone is the supply."""
    message = read(text)
    told = {f.fact: f.value for f in message.facts}

    assert (told.get("tap_volts"), told.get("supply_volts")) == (tap, supply)
    assert message.readings == ()
    assert message.unread == ()


def test_a_unit_told_after_its_supply_is_not_the_supply() -> None:
    """The building was told before."""
    known = Context(facts=(Fact(fact="supply_volts", value=240.0, unit="V"),))

    assert [(f.fact, f.value) for f in read("it is a 120 to 24 transformer", known).facts][:1] == [("tap_volts", 120.0)]


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("208v 40va amps on primary", True),
        ("how many amps on the secondary of a 75va", True),
        ("75va 480v primary amps", True),
        ("cuantos amps en el primario de 40va en 208", True),
        ("primary amps 0.31", False),
        ("primary 0.31 amps", False),
    ],
)
def test_amps_are_asked_for_where_none_are_told(text: str, asked: bool) -> None:  # noqa: FBT001
    """A reading is no question."""
    assert ("amps" in read(text).topics) is asked


@pytest.mark.parametrize("text", ["50va instead of 40va ok?", "can i put a 75 va in the same box as the 40"])
def test_a_bigger_unit_in_the_place_of_the_old_one_is_no_danger_by_itself(text: str) -> None:
    """It has an answer by the rule of its size."""
    assert read(text).dangers == ()


def test_a_unit_that_is_replaced_corrects_no_value() -> None:
    """Nothing that was read is taken back."""
    assert read("replace 40va with 75, 240 tap, 208 supply").asks == ("size",)


@pytest.mark.parametrize(
    ("text", "fuses"),
    [
        ("is 3 amp ok on a 75va", [3.0]),
        ("is a 5 amp ok on a 40va", [5.0]),
        ("keep 3a fuse or go 5a", [3.0, 5.0]),
        ("40va, 3 or 5 amp fuse?", [3.0, 5.0]),
        ("bigger fuse so it stops blowing, 10 amp", [10.0]),
        ("fuse keeps blowing can i go to 5a", [5.0]),
        ("20 amp fuse on the 24v ok?", [20.0]),
        ("fuse for 40 va on 480, 3 amp on the primary ok?", [3.0]),
        ("is 2.4 amps ok on a 75va", []),
        ("sec pulls 3 amps on a 75va is that ok", []),
        ("fuse is good, compressor pulls 10 amps", []),
    ],
)
def test_amps_are_of_the_fuse_where_the_words_are_about_one(text: str, fuses: list[float]) -> None:
    """And no reading across it."""
    message = read(text)

    assert told(message, "fuse_amps") == fuses
    assert not any(r.measure == "fuse_volts" for r in message.readings)


@pytest.mark.parametrize(
    "text",
    [
        "what does the fuse not protect",
        "time delay or fast blow on secondary?",
        "why not a bigger fuse",
        "que protege el fusible",
        "fuse on a 12v 20va",
        "40va on 480 what fuses",
        "keep 3a fuse or go 5a",
    ],
)
def test_a_question_about_the_fuse_is_one(text: str) -> None:
    """However it is put."""
    assert read(text).asks == ("fuse",)


def test_open_volts_beside_a_fuse_are_those_of_the_secondary() -> None:
    """They set the limit of the fuse, and no fuse is open."""
    readings = read("fuse for 75 va if open volts read 28.6").readings

    assert [(r.measure, r.value) for r in readings] == [("secondary_volts_lifted", 28.6)]


@pytest.mark.parametrize(
    ("text", "volts"),
    [
        ("tied commons, 53 v between the two R", 53.0),
        ("both Rs read 0.4 to each other with C tied", 0.4),
        ("R1 to R2 48v", 48.0),
        ("hot to hot 52v commons joined", 52.0),
        ("junte los comunes, entre los dos R hay 48 volts", 48.0),
    ],
)
def test_volts_between_two_units_are_a_phase_test(text: str, volts: float) -> None:
    """However the two R are named."""
    message = read(text)

    assert [(r.measure, r.value, r.is_of_two_units) for r in message.readings] == [("lead_volts", volts, True)]
    assert message.asks == ("parallel",)


def test_volts_at_each_r_are_no_phase_test() -> None:
    """They stand between R and C."""
    assert not any(r.is_of_two_units for r in read("C tied, 24v at both R").readings)


@pytest.mark.parametrize(
    "text",
    [
        "208/240 unit dead, only have a multitap 120/208/240, ok?",
        "can i use a multitap for a 240",
        "i have a multitap, will it do",
    ],
)
def test_a_multitap_in_one_word_is_one_too(text: str) -> None:
    """As often written as in two."""
    assert "multi_tap" in read(text).topics


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("150 ft of stranded 18 at 140F with 30 va", {"run_feet": 150.0, "wire_awg": 18.0, "copper_celsius": 60.0}),
        ("100 ft of solid 18 at 20C, 1 amp", {"run_feet": 100.0, "wire_awg": 18.0, "copper_celsius": 20.0}),
        ("80 ft of 18, attic is 140F", {"run_feet": 80.0, "wire_awg": 18.0}),
        ("1000 hz supply 40va", {"supply_hertz": 1000.0, "rated_va": 40.0}),
    ],
)
def test_the_kind_of_wire_and_its_temperature_are_read(text: str, facts: dict[str, float]) -> None:
    """In degrees Fahrenheit too, where they are those of the run."""
    assert {f.fact: f.value for f in read(text).facts if f.fact not in {"stranded", "load"}} == facts


def test_a_wire_in_square_millimetres_is_asked_about() -> None:
    """No gauge is that; the next thinner one is offered."""
    (unclear,) = read("40m of 1.5mm2 cable 20va").unclear

    assert str(unclear.question) == "1.5 mm² is no AWG. The next thinner is 16 AWG: send the gauge"
    assert unclear.choices == ("16 AWG",)


@pytest.mark.parametrize("text", ["ground one side of secondary? 277", "does a 277 to 24 need the secondary grounded"])
def test_the_ground_of_a_secondary_is_asked_about_on_a_supply(text: str) -> None:
    """277 V is no reading of it."""
    message = read(text)

    assert "secondary_ground" in message.dangers
    assert told(message, "supply_volts") == [277.0]
    assert message.readings == ()


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        (
            "prove it 40va 120, line 121, sec 27, 24.9 loaded, 24.1 at the stat, 1.2 amps",
            {
                "line_volts": 121,
                "secondary_volts_lifted": 27,
                "secondary_volts": 24.9,
                "control_volts": 24.1,
                "secondary_amps": 1.2,
            },
        ),
        (
            "installed 75va on 208: line 207, unloaded 27.1, loaded 25.4, stat 25.0, coil 24.8, 2.4 amps",
            {
                "line_volts": 207,
                "secondary_volts_lifted": 27.1,
                "secondary_volts": 25.4,
                "control_volts": 25.0,
                "coil_volts": 24.8,
                "secondary_amps": 2.4,
            },
        ),
        (
            "new 40va in: sec 27.2 no load, 22.1 loaded, 2.1 amps",
            {"secondary_volts_lifted": 27.2, "secondary_volts": 22.1, "secondary_amps": 2.1},
        ),
        (
            "ya lo instale, 27 sin carga, 24.9 con carga, 1.1 amps",
            {"secondary_volts_lifted": 27, "secondary_volts": 24.9, "secondary_amps": 1.1},
        ),
    ],
)
def test_a_proof_told_in_one_go_is_read_whole(text: str, readings: dict[str, float]) -> None:
    """Nothing of it is a guess, no amps are a thermostat's, and it is a proof without being called one."""
    message = read(text)

    assert {r.measure: r.value for r in message.readings} == readings
    assert not any(r.assumed for r in message.readings)
    assert message.asks == ("prove",)
    assert message.unread == ()
    assert not any(f.fact == "load" for f in message.facts)


def test_what_to_read_after_installing_asks_for_the_proof() -> None:
    """With the nominal supply behind the rating."""
    message = read("just put in a new 40va 120v, what should i read")

    assert message.asks == ("prove",)
    assert told(message, "supply_volts") == [120.0]


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("9 miles of 18 awg with 9va", "run_feet", 47520.0),
        ("15 amp breaker on 24v", "fuse_amps", 15.0),
        ("20 amp fusible en 24 voltios se puede", "fuse_amps", 20.0),
        ("supply is 5 volts what size for contactor 9va", "supply_volts", 5.0),
        ("contactor 9 kva what size", "load", 9000.0),
        ("supply 120000 contactor 9va", "supply_volts", 120000.0),
        ("need a 1.5kva transformer", "rated_va", 1500.0),
        ("contactor 9-10 va what size", "load", 10.0),
    ],
)
def test_more_nonsense_is_told_to_core_and_a_range_by_its_most(text: str, name: str, value: float) -> None:
    """Nothing of it becomes a reading."""
    message = read(text)

    assert told(message, name) == [value]
    assert message.readings == ()


def test_a_wire_for_a_run_is_no_question_of_leads() -> None:
    """In "what wire" alone leads are asked for; with a length, a gauge."""
    assert read("what wire for 200 ft at 1.5 amps").asks == ("wire_run",)
