"""Sizing through the one path: short, the refusal beside its answer, loads kept, runs of their own, a proof that goes on."""

import pytest

from tests.bot.test_safety_conversations import play


@pytest.mark.parametrize(
    "text",
    [
        "need va for 2 contactors 9va, gas valve half amp, board, 120 ft of 18",
        "2 contactors 9va each 60 inrush, gas valve .5a, stat 3va, what size",
        "12 contactors 10 va each what size",
        "what fuse for 40 va, 208 supply",
        "how much do i lose on 150 ft of 18 with 20 va",
        "can i put a 75 va in the same box as the 40",
        "necesito transformador para 2 contactores de 9va y valvula de gas medio amp",
    ],
)
def test_a_sizing_answer_is_read_at_a_glance(text: str) -> None:
    """Eight lines at most, the echo included."""
    assert len(play(text)[0].text.splitlines()) <= 8


def test_the_bare_board_of_the_supply_house_is_asked_for_and_its_figure_completes_the_load() -> None:
    """Two messages; the record's facts name no load without a figure."""
    first, second = play("need va for 2 contactors 9va, gas valve half amp, board, 120 ft of 18", "board is 6 va")

    assert "1 × board (usually 3 to 12 VA)" in first.text
    assert [f.get("device") for f in first.record()["facts"] if f["fact"] == "load"] == ["contactor", "gas valve"]
    assert second.answer.sizing is not None
    assert (second.answer.sizing.load_va, second.answer.sizing.pick_va) == (36.0, 50.0)


def test_a_sum_takes_the_place_of_its_parts() -> None:
    """18 VA told by devices, then 47 VA in all: 47, not 65."""
    second = play("2 contactors 9va what size", "whole load is 47 va what size")[1]

    assert second.answer.sizing is not None
    assert second.answer.sizing.load_va == 47.0


def test_a_run_is_about_the_loads_that_its_message_names() -> None:
    """12 contactors stay at the unit; the solenoid alone is at the end of 100 ft."""
    second = play("8 contactors 9va what size", "what do i lose on 100 ft of 18 with a 10va solenoid")[1]

    assert second.answer.sizing is not None
    assert second.answer.sizing.drop_volts == pytest.approx(24.0 * 1.554 / (57.6 + 1.554), abs=0.01)


def test_the_refusal_of_two_in_parallel_leaves_the_rest_of_the_answer() -> None:
    """No first; then what to buy, what it would take, and the phase test."""
    lines = play("can i parallel two 40 va transformers")[0].text.splitlines()

    assert lines[0].startswith("No.")
    assert "One 100 VA unit carries what two of 40 VA would" in lines
    assert any(line.startswith("Phase test for one common") for line in lines)


def test_a_proof_that_was_asked_for_goes_on_with_the_readings() -> None:
    """Each is judged as it comes, and at the end it passes without another test."""
    replies = play(
        "new 75va in on the 208 tap, 208 building, prove it",
        "line 209",
        "sec 26.6 no load",
        "sec 25.2 loaded, R-C 24.9",
        "coil 24.6, sec 2.1 amps",
    )

    assert "Not proved yet: 6 readings" in replies[0].text
    assert "Pass, Line: 209.0 V" in replies[1].text
    assert "Pass, Secondary, one lead off: 26.6 V" in replies[2].text
    assert "PASS: every reading is in its range" in replies[4].text
    assert replies[4].answer.next_test is None


def test_a_proof_that_fails_says_so_and_searches_on() -> None:
    """19 V at the stat."""
    last = play("new 40va in, 120 supply, prove it", "line 121, sec 25.1, R-C 19.0v")[1]

    assert "FAIL: 1 reading out of its range" in last.text
    assert "Fail, R to C at the stat: 19.0 V" in last.text
    assert last.answer.next_test is not None


def test_what_was_refused_is_built_on_no_further() -> None:
    """9,999 ft are refused once; the next load is answered without them."""
    replies = play("what size for contactor 9va", "9999 ft of 18", "contactor 10va")

    assert "makes no sense here" in replies[1].text
    assert "Buy 40 VA: 10 VA steady needs 20" in replies[2].text


def test_a_device_by_itself_joins_the_loads_that_were_told() -> None:
    """Its label is asked for."""
    second = play("2 contactors 9va, gas valve .5a", "board")[1]

    assert "1 × board (usually 3 to 12 VA)" in second.text


def test_a_unit_told_after_its_loads_is_judged() -> None:
    """Coil ohms told before do not stand in the way."""
    last = play("coil ohms 14 what size transformer", "contactor label says 8va 50 inrush", "on 40va ok?")[2]

    assert "40 VA is enough: 8 VA steady" in last.text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("208v 40va amps on primary", "40 VA: 0.19 A on the primary (40 / 208 V), 1.67 A on the secondary (40 / 24 V)"),
        ("75va 480v primary amps", "75 VA: 0.16 A on the primary (75 / 480 V)"),
        ("how many amps on the secondary of a 75va", "75 VA / 24 V = 3.12 A on the secondary"),
        ("how many amps will 3 contactors 9va pull", "27 VA / 24 V = 1.12 A on the secondary"),
        ("replace 40va with 75, 240 tap, 208 supply", "208 V on the 240 V tap gives 20.8 V"),
        ("replace 40va with 75, 240 tap, 208 supply", "Yes, 75 VA"),
        ("120 to 24 40va, supply is 240 can i use it", "240 V on the 120 V tap puts about 48 V on the controls"),
        ("480 to 24 transformer on 240 supply what comes out", "No: 240 V on the 480 V tap gives 12.0 V"),
        ("need va for 2 contactors 9va and a whatchamacallit", "“whatchamacallit”: no device I know. Send the VA or amps"),
        ("need va for 2 contactors 9va and a whatchamacallit", "At least 30 VA"),
        ("a whatchamacallit", "“whatchamacallit”: no device I know"),
        ("two contactors", "2 × contactor (usually 5 to 10 VA)"),
        ("two contactors", "usual VA: common practice"),
        ("dos contactores", "2 × contactor (por lo común 5 a 10 VA)"),
        ("contactor 24v coil", "1 × contactor (usually 5 to 10 VA)"),
        ("inrush 9 sealed 60 contactor", "Inrush 9 VA under sealed 60 VA can't be for one contactor. Swapped?"),
    ],
)
def test_what_is_written_in_a_hurry_is_answered(text: str, said: str) -> None:
    """What is wrong, what to send, or the answer."""
    assert said in play(text)[0].text


def test_bare_devices_join_the_loads_of_the_job() -> None:
    """Their range is marked, and their label asked for."""
    second = play("need va for a board 10va", "two contactors")[1]

    assert "10 VA known, the rest usually 10 to 20 VA" in second.text
    assert "2 × contactor (usually 5 to 10 VA)" in second.text


def test_the_pull_in_of_a_far_contactor_is_weighed_through_the_transformer() -> None:
    """60 VA from a 40 VA unit over 120 ft of 18: the windings take their part, and full volts at the transformer are none."""
    text = play("18/5 stat wire 120 ft, condenser contactor 8va sealed 60va inrush, 40va transformer, will it pull in?")[0].text

    assert "Too long for the pull-in: 60 VA from 40 VA over 120 ft of 18 AWG leaves 18.9 V, 20.4 V needed" in text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("is 3 amp ok on a 75va", "3 A is fine"),
        ("40va trans, keep 3a fuse or go 5a", "No: 5 A is over the Class 2 limit"),
        ("40va trans, keep 3a fuse or go 5a", "3 A is allowed, but passes 4.1 A for an hour"),
        ("keep 3a fuse or go 5a", "3 A is within Class 2 on any 24 V unit"),
        ("keep 3a fuse or go 5a", "No: 5 A is over Class 2 on any 24 V unit"),
        ("bigger fuse so it stops blowing, 10 amp", "No. 10 A is too big for a 24 V circuit"),
        ("fuse keeps blowing can i go to 5a", "No: 5 A is over Class 2 on any 24 V unit"),
        ("what does the fuse not protect", "A fuse stops a short, not a small overload"),
        ("time delay or fast blow on secondary?", "Time-delay in R"),
        ("why not a bigger fuse", "a bigger one burns the winding"),
        ("fuse for 75 va if open volts read 28.6", "Class 2 limit 3.50 A: 100 / 28.6 V open"),
        ("20 amp fuse on the 24v ok?", "20 A has no place on 24 V controls"),
    ],
)
def test_a_fuse_is_judged_as_it_is_asked_about(text: str, said: str) -> None:
    """Each of two, without the unit too, and with what a fuse does not do."""
    assert said in play(text)[0].text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2 contactors, gas valve, board, stat what size", "such devices usually draw 21 to 59 VA in all"),
        ("2 contactors, gas valve, board, stat what size", "75 VA carries the most of it, pull-in included"),
        ("40 zone valves, what size", "Over Class 2: such devices usually draw 200 to 480 VA in all"),
        ("ground one side of secondary? 277", "Ground one side of the secondary"),
        ("208/240 unit, only have a multitap 120/208/240, 277 building", "No: none of its taps is for 277 V"),
        ("tied commons, 53 v between the two R", "53 V R to R: out of phase"),
        ("1000 hz supply 40va", "1000 Hz is no supply here. Send 50 or 60 Hz"),
    ],
)
def test_more_of_the_counter_is_answered(text: str, said: str) -> None:
    """Each by its rule."""
    assert said in play(text)[0].text


def test_a_size_by_coil_ohms_is_refused_and_nothing_is_diagnosed() -> None:
    """What to read instead is said, and no test on the line side is asked for."""
    reply = play("need va for contactor 9 ohms and gas valve 4 ohms")[0]

    assert "No VA from coil ohms" in reply.text
    assert reply.answer.next_test is None
    assert "Not clear yet" not in reply.text


def test_a_proof_told_in_one_go_passes_or_fails_at_once() -> None:
    """Each reading beside its range."""
    passed = play("installed 75va on 208: line 207, unloaded 27.1, loaded 25.4, stat 25.0, coil 24.8, 2.4 amps")[0].text
    failed = play("new 40va in: sec 27.2 no load, 22.1 loaded, 2.1 amps")[0].text

    assert "PASS: every reading is in its range" in passed
    assert "Pass, Secondary amps, all calling: 2.40 A, at most 3.12 A" in passed
    assert "FAIL: 2 readings out of their range" in failed
    assert "Fail, Secondary amps, all calling: 2.10 A, at most 1.67 A" in failed


def test_the_line_of_a_proof_in_progress_belongs_to_it() -> None:
    """Read unasked, it leaves the proof where it was."""
    second, third = play("new 40va in, prove it", "line 121", "sec 27, 24.9 loaded")[1:]

    assert second.text.splitlines()[1] == "Not proved yet: 5 readings to take"
    assert "Not proved yet: 3 readings to take" in third.text


def test_loads_are_changed_as_a_list_is_changed() -> None:
    """One more, another number of them, another figure, one that goes: each time the sum of what is left."""
    replies = play(
        "2 contactors 9va what size",
        "another contactor 9va",
        "make that 4 contactors",
        "contactors are 12va",
        "add a board 8va",
        "take out the board",
    )
    sums = [reply.answer.sizing.load_va for reply in replies if reply.answer.sizing is not None]

    assert sums == [18.0, 27.0, 36.0, 48.0, 56.0, 48.0]
    assert "Taken off: board" in replies[-1].text


def test_the_worst_case_counts_where_cooling_and_heating_never_run_together() -> None:
    """22 VA of cooling beside 15 of heating: 22, and the fuse with it."""
    reply = play("2 contactors 9va and fan relay 4va, gas valve 12va and inducer relay 3va, never at the same time, what size")[
        0
    ]

    assert reply.answer.sizing is not None
    assert (reply.answer.sizing.load_va, reply.answer.sizing.pick_va) == (22.0, 30.0)
    assert "Buy 40 VA: 22 VA steady needs 30, the usual pull-in 40" in reply.text
    assert "Counted what is on at once: 22 of 37 VA (cooling)" in reply.text


def test_a_unit_without_spare_for_what_is_missing_is_not_left_open() -> None:
    """33 VA leave 21 % on 40 before the thermostat is counted."""
    text = play("humidifier 15 watts and a uv light 18 watts and stat, 40va enough?")[0].text

    assert "40 VA leaves too little spare: 33 VA known, the rest usually 1 to 5 VA. Buy 50 VA" in text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("one xfmr for heat and one for cool sharing a common ok?", "Phase test for one common"),
        ("which side of the secondary do i ground", "The C side to the cabinet's ground"),
        ("swap a 240v 40va for a multitap 75va, building 208", "Land common and the 208 V lead"),
        ("swap a 240v 40va for a multitap 75va, building 208", "Yes, 75 VA"),
        ("transformer says 50/60 hz ok on 60?", "Yes: marked 50/60 Hz it runs on either"),
        ("220v 50hz transformer on 240 60hz", "240 V on the 220 V tap gives 26.2 V"),
        ("100va in the box where 40va was, same fuse?", "The 24 V fuse stays as it is"),
        ("upsize 40va to 75va, line fuse is 0.5a on 120", "0.5 A opens at full load, 0.62 A"),
        ("upsize 40va to 75va, line fuse is 0.5a on 120", "Line fuse for 75 VA: 1.8 A"),
        ("how far can 18/2 go with .5 amps at 20C", "Longest in 18 AWG: 564 ft (172 m)"),
        ("smallest wire for 250 ft, contactor 9 va 60 inrush", "For 250 ft: 14 AWG or thicker"),
    ],
)
def test_a_change_of_kind_and_a_run_are_answered_as_they_are_asked(text: str, said: str) -> None:
    """By the rule of each."""
    assert said in play(text)[0].text


def test_a_smaller_unit_is_judged_by_the_load_that_was_told() -> None:
    """29 VA do not go on 20."""
    second = play("contactor 9va, board 8va, gas valve .5a what size", "can i go from 40va to 20va")[1]

    assert "No: 29 VA steady asks for more, 20 VA carries 16 VA" in second.text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("contactor zero va what size", "0 VA for one contactor can't be"),
        ("-9 va contactor what size", "-9 VA for one contactor can't be"),
        ("need a 5000 va transformer", "5,000 VA is no control transformer"),
        ("contactor 9 kva what size", "9,000 VA for one contactor can't be"),
        ("500 contactors 9va what size", "500 × contactor makes no sense"),
        ("run of 9,999 ft 18 gauge 9va", "A run of 9,999 ft makes no sense here"),
        ("9 miles of 18 awg with 9va", "A run of 47,520 ft makes no sense here"),
        ("-100 ft of 18 with 10va", "A run of -100 ft makes no sense here"),
        ("40 gauge 100 ft 9va", "40 AWG is no control wire"),
        ("15 amp breaker on 24v", "15 A has no place on 24 V controls"),
        ("supply is 5 volts what size for contactor 9va", "A supply of 5 V makes no sense here"),
        ("9va contactor inrush 5000", "Inrush 5000 VA can't be for one contactor"),
        ("what size for a toaster 1200 watts", "“toaster 1200 watts”: no device I know"),
        ("banana 9va plus 3 purple relays", "“banana 9va”: no device I know"),
        ("fuse -3 amps 40va", "A fuse of -3 A can't be"),
        ("contactor de 5000 va", "5,000 VA no puede ser (contactor)"),
        ("9999 pies de 18 con contactor de 9va", "Un tramo de 9,999 pies no tiene sentido"),
    ],
)
def test_nonsense_is_refused_with_what_to_send(text: str, said: str) -> None:
    """And no number of the record is built on it."""
    reply = play(text)[0]
    sizing = reply.record()["sizing"]

    assert said in reply.text
    assert all(value is None for name, value in sizing.items() if name not in {"refused", "rules"})


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("will 75 be enough for 5 zone valves 12va", "75 VA is enough: 60 VA steady, 25 % spare"),
        ("how many 8va zone valves on a 40va", "4 × zone valve at 8 VA"),
        ("how many relays can a 40va run", "5 to 16 × relay: usually 2 to 6 VA each, the label decides"),
        ("max load on 75va", "75 VA carries 60 VA steady (2.50 A), 25 % spare kept"),
        ("cuantas valvulas de zona de 8va aguanta uno de 40va", "4 × válvula de zona de 8 VA"),
        ("can a 40va run a humidifier and a furnace board", "1 × humidifier (usually 5 to 20 VA)"),
        ("40va at 24v what breaker", "24 V fuse for 40 VA: 2 A"),
        ("wire size for 24v 3 amps 60 ft", "For 60 ft: 18 AWG or thicker, 12 AWG to stay within 3 %"),
        ("dist 45 m calibre 20 bobina 10va", "148 pies de 20 AWG dejan 22.57 V"),
    ],
)
def test_what_a_unit_carries_is_answered(text: str, said: str) -> None:
    """In number, in VA and in amps."""
    assert said in play(text)[0].text


def test_a_device_of_which_it_is_asked_how_many_go_on_is_no_load() -> None:
    """The next question is not about one valve."""
    second = play("how many zone valves can i hang on a 75va", "what size")[1]

    assert "zone valve" not in second.text


def test_a_conversation_at_the_counter_keeps_its_thread() -> None:
    """The gauge alone, the question what now, an ok, a number alone, a list behind a colon, and the primary fuse on a line that was read."""
    gauge = play("need va for 2 contactors 9va and econ 12va", "wire is 18", "140 ft")
    unit = play("40va unit", "3 zone valves 8va each", "ok?", "add a stat 3va", "and a humidifier 15va", "what now")
    line = play(
        "que transformador para contactor de 9va y tarjeta",
        "la tarjeta es de 6 va",
        "son dos contactores",
        "linea 240",
        "que fusible primario",
    )
    pump = play(
        "what do i need for a heat pump: contactor, rev valve, defrost board, stat, 2 sequencers", "sequencers 6va each"
    )

    assert "140 ft of 18 AWG leaves" in gauge[2].text
    assert "40 VA is enough: 24 VA steady" in unit[2].text
    assert unit[5].text.startswith("Too small: 42 VA steady on 40 VA. Buy 60 VA")
    assert "Leído: 2 × contactor 9 VA" in line[2].text
    assert "Fusible de línea para 40 VA: 0.5 A" in line[4].text
    assert "2 × sequencer (usually 4 to 10 VA)" in pump[0].text
    assert "2 × sequencer 6 VA" in pump[1].text


def test_what_to_buy_is_said_again_with_whatever_changes() -> None:
    """Another gauge: the purchase stands in the reply, though the one before has said it."""
    third = play("contactor 9va 60 inrush", "150 ft of 18", "what about 14 gauge")[2]

    assert "Buy 40 VA: 9 VA steady needs 20, its pull-in 40" in third.text
    assert "21.0 V on 40 VA" in third.text or "20.9 V on 40 VA" in third.text


def test_the_secondary_of_a_480_volt_job_is_grounded_by_its_supply() -> None:
    """Told with the load, and asked in a word."""
    replies = play("sizing rtu 480 supply, load 38va", "do i ground it")

    assert "Ground one side of the secondary" in replies[0].text
    assert "The C side to the cabinet's ground" in replies[1].text
