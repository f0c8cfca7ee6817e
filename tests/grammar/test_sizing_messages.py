"""What sizing needs of a text beside readings: gauges behind lengths, runs, loads without a figure, what a question is narrowed down to."""

import pytest

from core.readings import Fact
from grammar import Context, Message, read


def told(message: Message, name: str) -> list[object]:
    """The values of all facts of a name."""
    return [f.value for f in message.facts if f.fact == name]


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
    "text", ["2 contactors, gas valve, board, stat what size, no labels", "contactor, board and stat de cuantos va"]
)
def test_the_last_device_before_a_question_is_a_load_too(text: str) -> None:
    """None is dropped in silence."""
    assert "thermostat" in [f.device for f in read(text).facts]


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
