"""Danger is heard in many wordings, and nowhere else."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dangers import DANGERS
from grammar import read
from grammar.dangers import dangers_in, index
from grammar.dangers.likeness import NONE, likeness
from grammar.dangers.meanings import from_tables as ready_spellings
from grammar.dangers.meanings import meanings
from grammar.dangers.phrases import Text, phrase, tokens
from grammar.learn_dangers import examples
from grammar.words.danger_acts import ACTS
from grammar.words.danger_frames import BESIDE, FRAMES
from grammar.words.danger_meanings import MEANINGS
from grammar.words.danger_parts import PARTS
from grammar.words.danger_scenes import SCENES
from grammar.words.dangers import DANGERS as PHRASES

ROWS = [json.loads(line) for line in (Path(__file__).parent / "danger_messages.jsonl").read_text(encoding="utf-8").splitlines()]
DANGEROUS = [(row["text"], row["danger"]) for row in ROWS if row["danger"]]
HARMLESS = [row["text"] for row in ROWS if row["danger"] is None]


@pytest.mark.parametrize(("text", "danger"), DANGEROUS)
def test_a_danger_is_heard(text: str, danger: str) -> None:
    """Each invented message shows the danger that it was written to show."""
    assert danger in read(text).dangers


@pytest.mark.parametrize("text", HARMLESS)
def test_a_harmless_message_shows_no_danger(text: str) -> None:
    """Readings, denials, questions and repairs done well are silent."""
    assert read(text).dangers == ()


@pytest.mark.parametrize(
    "text",
    [
        "no smoke",
        "no smoke or burning smell",
        "not jumping it",
        "never jumped the float",
        "didn't get shocked",
        "smoke: none",
        "the smell is gone now, smoke cleared",
        "I won't bypass the limit",
        "got shocked last year on one of these",
        "no hay humo",
        "no huele a gas",
        "no voy a puentear el fusible",
        "sin humo ni olor",
        "nadie se lastimó",
        "what about the shock hazard",
        "found the float jumped, removed the jumper",
    ],
)
def test_what_is_denied_or_past_is_no_danger(text: str) -> None:
    """A denial, a time long past and a jumper that is out again take it back."""
    assert dangers_in(text).names == ()


@pytest.mark.parametrize(
    ("text", "danger"),
    [
        ("no heat, jumped the limit", "bypass_gas_safety"),
        ("why not just jump the fuse", "bypass_fuse"),
        ("no fuses left so I jumped the fuse", "bypass_fuse"),
        ("no smoke but I smell gas", "gas_smell"),
        ("smelled gas last week and still do", "gas_smell"),
    ],
)
def test_a_denial_reaches_no_further_than_it_says(text: str, danger: str) -> None:
    """What is denied is one thing; the danger beside it stands."""
    assert danger in dangers_in(text).names


def test_a_jumper_to_test_is_practice_and_one_that_stays_is_not() -> None:
    """A safety may be jumped for a moment by somebody who watches; never a fuse."""
    assert dangers_in("jumped the float for a second to test, watching it").names == ("test_jumper",)
    assert "bypass_float" in dangers_in("jumped the float to test and leaving it until tomorrow").names
    assert "bypass_fuse" in dangers_in("jump the fuse for a second to test").names


@pytest.mark.parametrize(
    "text", ["locked out and proved dead", "verified dead with my meter", "ya lo bloqueé y comprobé que está muerto"]
)
def test_who_proved_dead_is_heard(text: str) -> None:
    """It answers the caution, and shows no danger."""
    warned = dangers_in(text)

    assert warned.proved_dead
    assert warned.names == ()


@pytest.mark.parametrize(
    ("text", "symptoms"),
    [
        ("we smoked a turkey, sec 25.9 lifted", []),
        ("burnt toast this morning, sec 25.9", []),
        ("smoke break is over, sec 25.9", []),
        ("smoked ribs for lunch and now the board smokes, sec 25.9", ["smoke"]),
        ("transformer smoked, sec 25.9", ["smoke"]),
        ("winding smells like burnt popcorn, sec 25.9", ["burnt"]),
    ],
)
def test_smoke_of_the_lunch_is_no_symptom(text: str, symptoms: list[str]) -> None:
    """What stands in a harmless sense alone is no sign of a fault."""
    told = [fact.value for fact in read(text).facts if fact.fact == "symptom"]

    assert told == symptoms


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("door open, reading the primary now", None),
        ("the cover is open, I'm at the primary", None),
        ("puerta abierta, leo el primario", None),
        ("door open, primary is open", "open"),
    ],
)
def test_an_open_door_is_no_open_winding(text: str, value: str | None) -> None:
    """A cover that is open says nothing of the transformer behind it."""
    told = next((reading.value for reading in read(text).readings), None)

    assert told == value


def test_who_did_not_prove_dead_is_not_believed() -> None:
    """The same words, denied."""
    assert not dangers_in("haven't proved dead yet").proved_dead


@pytest.mark.parametrize(
    ("text", "qualified"),
    [
        ("I'm qualified for 480", True),
        ("I'm an apprentice, it's 480", False),
        ("not qualified for 480", False),
        ("pri 478", None),
    ],
)
def test_qualification_is_heard(text: str, *, qualified: bool | None) -> None:
    """It is said, denied or not spoken of."""
    assert dangers_in(text).qualified is qualified


def test_every_danger_of_the_words_is_in_the_table() -> None:
    """A name that core does not know would be dropped in silence."""
    assert {cue.meaning for cue in PHRASES} | {scene.danger for scene in SCENES} <= DANGERS.keys()


def test_every_phrase_can_be_read() -> None:
    """No phrase names a concept that is not there, and every concept is used, by a phrase, a scene or by its name."""
    written = [text for rows in index.ROWS.values() for _, text in rows]
    used = " ".join(written)
    in_scenes = {name for scene in SCENES for name in (*scene.parts, *scene.also, *scene.unless, *scene.told)}
    by_name = {"PAST", "UNDONE", "WATCH", "BLED", "MULTITAP", "GEAR", "COVERS", "STATPOINTS"} | in_scenes

    assert all(phrase(text, PARTS).parts for text in written)
    assert {name for name in PARTS if not any(f"{mark}{name}" in used for mark in "{@!")} <= by_name


def test_every_act_of_a_scene_is_told_by_something() -> None:
    """A name that is neither an act nor a concept would make a scene that nobody can show."""
    acts = {cue.meaning for cue in ACTS}
    named = {name for scene in SCENES for name in (*scene.acts, *scene.far_above)}

    assert named <= acts
    assert {name for scene in SCENES for name in (*scene.also, *scene.unless, *scene.told)} <= acts | PARTS.keys()


@pytest.mark.parametrize("value", ["0.4", "12", "36.61", "47", "52.9", "240", "480"])
@pytest.mark.parametrize("unit", ["ohms", "k", "k ohms", "megohms", "amps", "va"])
@pytest.mark.parametrize("place", ["pri", "sec", "pri to sec", "sec to ground", "load R-C", "coil", "cabinet to ground"])
def test_what_is_no_voltage_shows_no_danger_of_voltage(place: str, value: str, unit: str) -> None:
    """A reading in ohms or amps is neither too many volts out nor a supply over its tap."""
    assert dangers_in(f"{place} {value} {unit}").names == ()


def test_a_short_that_was_found_is_no_reason_against_power() -> None:
    """What was told before it no longer counts."""
    assert "energise_into_short" in dangers_in("flipping the breaker on", ("R to C 0.3 ohms",)).names
    assert dangers_in("flipping the breaker on", ("R to C 0.3 ohms", "found the short, R to C 19 ohms")).names == ()


def test_a_live_cabinet_is_heard() -> None:
    """Two volts are none."""
    assert dangers_in("cabinet to ground 118v").names == ("live_cabinet",)
    assert dangers_in("chassis to ground 1.5 v").names == ()


def test_likeness_is_clear_where_enough_is_said() -> None:
    """One word is no likeness, a sentence is one, and who refuses or has undone it is not refused again."""
    told = likeness(Text(tokens("inducer tube had water so i blew it out and left the pressure switch strapped across")))

    assert not likeness(Text(tokens("bypass"))).is_clear
    assert told.is_clear
    assert told.harmless < 0.2
    assert dangers_in("owner wants the fuse done away with for good, told him no, that stays as built").names == ()


def test_a_misspelt_word_is_known_by_its_sound() -> None:
    """Whoever writes as they speak, or leaves out the vowels, is understood; a word that is known is not taken for another."""
    told = meanings(tokens("brinke el frezstat, tierrra sueltta"), frozenset())

    assert {"JUMP", "FREEZE", "GROUNDWIRE", "BARE"} <= told
    assert meanings(("tierrra",), frozenset({"tierrra"})) == set()


def test_what_is_denied_is_another_meaning() -> None:
    """Up to the next turn of the sentence."""
    told = meanings(tokens("no smoke, jumped the float"), frozenset())

    assert {"~SMOKE", "JUMP", "FLOAT"} <= told
    assert "SMOKE" not in told


def test_the_frames_are_of_meanings_and_dangers() -> None:
    """A name that nothing has would teach nothing."""
    told = {name.lstrip("~") for line in FRAMES.values() for name in line.replace(";", " ").split() if ":" not in name}

    assert told <= MEANINGS.keys()
    assert set(BESIDE) - {"v:24", "v:MAIN"} <= MEANINGS.keys()
    assert FRAMES.keys() - {NONE} <= DANGERS.keys()


def test_the_spellings_stand_ready() -> None:
    """`python -m grammar.write_tables` was run after the last change."""
    assert ready_spellings() is not None


@pytest.mark.parametrize(
    ("before", "text", "danger"),
    [
        ((), "tag says BLK 120, ORG 240. house is 240. landing black and white, capping orange", "tap_too_low"),
        (("black is 120, red is 208",), "L1-L2 208, so im hooking up the black and white", "tap_too_low"),
        (("black is 120, red is 208",), "L1-L2 208, so im hooking up the red and white", None),
    ],
)
def test_a_tap_is_known_by_the_colour_of_its_lead(before: tuple[str, ...], text: str, danger: str | None) -> None:
    """The volts of a colour may have been told before."""
    assert ("tap_too_low" in dangers_in(text, before).names) is (danger is not None)


def test_the_examples_name_dangers_of_the_table() -> None:
    """And some are harmless."""
    named = {danger for _, danger in examples()}

    assert named - {NONE} <= DANGERS.keys()
    assert NONE in named


def test_the_danger_tables_are_those_of_the_words() -> None:
    """`python -m grammar.write_tables` was run after the last change."""
    assert index.from_tables()


@pytest.mark.parametrize(
    ("before", "text", "danger"),
    [
        (("high limit opens after five minutes",), "bypassing it for the night", "bypass_gas_safety"),
        (("fuse pops right away",), "ok then a paper clip across it", "bypass_fuse"),
        (("R to C 0.2 ohms, transformer out",), "new one is mounted, about to flip the breaker", "energise_into_short"),
        (("board shows nothing, no lights",), "then it's safe to grab the line wires?", "dead_controls"),
        (("fuse holder has a strip of foil in it now",), "so that's fine till the part comes?", "bypass_fuse"),
        (("la boya no deja arrancar",), "la puenteo y ya", "bypass_float"),
    ],
)
def test_what_was_told_before_says_what_a_word_stands_for(before: tuple[str, ...], text: str, danger: str) -> None:
    """The message alone shows nothing of the kind."""
    assert danger in dangers_in(text, before).names
    assert danger not in dangers_in(text).names


@pytest.mark.parametrize(
    "text",
    [
        "jumped in the van, next stop is yours",
        "jumped R to Y and the float is dry",
        "the limit isn't bypassed",
        "owner asked me to jump the rollout, told him no",
        "raining, waiting in the truck till it stops",
        "nothing bypassed anywhere",
        "the jumper on the pressure switch is out again",
        "gas station lunch, then R-C 25",
        "the last stop had a smoke detector chirping",
        "subí a la troca y brinqué a la siguiente",
    ],
)
def test_a_word_of_danger_in_another_sense_is_silent(text: str) -> None:
    """A truck that is jumped into, an act on another part, a refusal of one's own."""
    assert dangers_in(text).names == ()


@given(st.text(max_size=200))
def test_any_text_can_be_read(text: str) -> None:
    """Nothing that can be sent breaks it."""
    assert isinstance(dangers_in(text).names, tuple)
    assert all(word == "|" or word.isalnum() or word[0].isdigit() for word in tokens(text))
