"""Which lead is which, from ohms in any order, partly missing, partly wrong."""

import itertools

import pytest

from core.leads import map_leads
from core.readings import Fact, Job, Reading

FIVE = (
    "white black 20.4, white red 53.0, white orange 66.7, black red 32.9, black orange 46.6, red orange 13.9, blue yellow 1.2"
)


def told(text: str, *facts: Fact, rest_open: bool = True) -> Job:
    """A job with these pairs; all other pairs of the named leads open."""
    rows = [row.split() for row in text.split(",")]
    pairs = {(a, b): "open" if v == "OL" else float(v) for a, b, v in rows}
    names = dict.fromkeys(name for p in pairs for name in p)
    if rest_open:
        known = {frozenset(p) for p in pairs}
        pairs |= {p: "open" for p in itertools.combinations(names, 2) if frozenset(p) not in known}
    return Job(readings=tuple(Reading(measure="lead_ohms", value=v, leads=p) for p, v in pairs.items()), facts=facts)


def label(lead: str, role: str) -> Fact:
    """What a label says."""
    return Fact(fact="lead_is", lead=lead, role=role)


def roles(job: Job) -> dict[str, str]:
    """Lead to role."""
    found = map_leads(job).leads
    assert found is not None
    return {lead: role for w in found.windings for lead, role in w.leads}


def test_all_pairs_decide_everything() -> None:
    """Order, windings, sides and the common end."""
    found = map_leads(told(FIVE)).leads

    assert found.windings[0].leads == (("white", "common"), ("black", "120"), ("red", "208"), ("orange", "240"))
    assert dict(found.windings[1].leads) == {"blue": "24", "yellow": "24"}
    assert found.confidence >= 0.95
    assert found.confirm is None


@pytest.mark.parametrize("seed", range(5))
def test_the_order_in_which_pairs_come_does_not_matter(seed: int) -> None:
    """Nor which lead of a pair is named first."""
    rows = FIVE.split(", ")
    mixed = [" ".join([r.split()[1], r.split()[0], r.split()[2]]) for r in rows[seed:] + rows[:seed]]

    assert roles(told(",".join(mixed))) == roles(told(FIVE))


def test_a_missing_pair_is_inferred_where_it_follows() -> None:
    """Four of six pairs put four leads on a line."""
    job = told("white black 20.4, white red 53, black orange 46.6, red orange 13.8, blue yellow 1.2", rest_open=False)

    assert roles(job)["orange"] == "240"


def test_one_wrong_reading_is_named_to_be_taken_again() -> None:
    """The line of all others shows it."""
    answer = map_leads(told(FIVE.replace("black red 32.9", "black red 39.2")))

    assert set(answer.next_test.leads) == {"black", "red"}
    assert roles(told(FIVE.replace("black red 32.9", "black red 39.2"))) == roles(told(FIVE))


def test_a_repeated_pair_replaces_the_earlier() -> None:
    """The second reading counts."""
    wrong = told(FIVE.replace("black red 32.9", "black red 39.2"))
    mended = Job(readings=(*wrong.readings, Reading(measure="lead_ohms", value=32.8, leads=("red", "black"))))

    assert map_leads(mended).next_test is None


def test_the_rest_ol_does_not_part_what_holds_together() -> None:
    """Two leads that both read ohms to a third can't be open to each other."""
    job = told("white black 20.4, white red 53, white orange 66.7, black red 32.9, blue yellow 1.2")

    assert roles(job) == roles(told(FIVE))


def test_a_mirror_that_only_colours_tell_is_never_sure() -> None:
    """White and black are both in use for common."""
    found = map_leads(told("white black 20.0, white red 40.1, black red 20.1, blue yellow 1.1")).leads

    assert found.confidence < 0.9
    assert found.alternatives


def test_doubt_asks_for_one_test_and_confirm_is_the_same() -> None:
    """One object in both places."""
    answer = map_leads(told("a b 20.0, a c 40.1, b c 20.1, d e 1.1"))

    assert answer.next_test is not None
    assert answer.leads.confirm is answer.next_test


def test_the_ratio_test_tells_208_from_240() -> None:
    """24 V across the whole, read there too: half of it at 120 of 240 V, more at 120 of 208."""
    base = told("a b 20.0, a c 46.0, b c 26.1, d e 1.1")
    whole = Reading(measure="lead_volts", value=24.1, leads=("a", "c"))
    half = Job(readings=(*base.readings, whole, Reading(measure="lead_volts", value=12.1, leads=("a", "b"))))
    more = Job(readings=(*base.readings, whole, Reading(measure="lead_volts", value=13.9, leads=("a", "b"))))

    assert roles(half)["c"] == "240"
    assert roles(more)["c"] == "208"


def test_a_ratio_test_comes_with_its_caution() -> None:
    """24 V goes on the primary only."""
    answer = map_leads(told("a b 20.0, a c 46.0, b c 26.1, d e 1.1"))

    assert answer.next_test.measure == "lead_volts"
    assert "ratio_test_primary_only" in answer.cautions


def test_a_mirror_that_no_reading_tells_asks_for_a_label() -> None:
    """Equal halves after the ratio test: a nameplate would not help."""
    base = told("a b 20.0, a c 40.1, b c 20.1, d e 1.1", Fact(fact="nameplate_taps", value=(120.0, 240.0)))
    live = tuple(Reading(measure="lead_volts", value=v, leads=p) for v, p in ((24.1, ("a", "c")), (12.0, ("a", "b"))))
    answer = map_leads(Job(readings=(*base.readings, *live), facts=base.facts))

    assert answer.next_test.fact == "lead_is"
    assert "Two equal halves: for 240 V land both ends, whichever is common" in map(str, answer.lines)


def test_a_label_that_is_not_there_is_not_asked_for_again() -> None:
    """Nothing is left to ask, and the doubt stays said."""
    taps = Fact(fact="nameplate_taps", value=(120.0, 240.0))
    base = told("a b 20.0, a c 40.1, b c 20.1, d e 1.1", taps)
    answer = map_leads(Job(readings=base.readings, facts=(taps,), declined=frozenset({("lead_is", None)})))

    assert answer.next_test is None
    assert answer.leads.confidence < 0.9


def test_a_label_decides_where_ohms_do_not() -> None:
    """Equal halves, and the label names an end."""
    text = "a b 20.0, a c 40.1, b c 20.1, d e 1.1"
    found = map_leads(told(text, label("c", "common"), label("b", "120"), label("a", "240"))).leads

    assert found.windings[0].leads[0] == ("c", "common")
    assert found.confidence >= 0.9


def test_ohms_outrank_a_label_and_the_mismatch_is_said() -> None:
    """The label of another unit."""
    answer = map_leads(told(FIVE, label("black", "240"), label("orange", "common")))

    assert dict(answer.leads.windings[0].leads)["white"] == "common"
    assert any("label" in str(line) for line in answer.lines)


def test_a_centre_tap_has_half_the_volts_on_both_sides() -> None:
    """Equal halves of low ohms."""
    known = roles(told("white black 30.1, yellow blue 0.8, yellow green 0.8, blue green 1.4"))

    assert {known["blue"], known["green"]} == {"12"}
    assert known["yellow"] == "ct"


def test_two_equal_windings_are_two_primaries() -> None:
    """For use in series and in parallel."""
    found = map_leads(told("h1 h2 30, h3 h4 31, x1 x2 0.9")).leads

    assert [w.role for w in found.windings] == ["primary", "primary", "secondary"]


@pytest.mark.parametrize(
    ("text", "finding"),
    [
        ("white black OL, black red 33, black orange 46.6, red orange 13.9, blue yellow 1.2", "primary_open"),
        ("white black 20.4, white red 53, black red 32.9, red orange OL, blue yellow 1.2", "primary_open"),
        ("white black OL, blue yellow 1.2", "primary_open"),
        ("white black 20.4, blue yellow OL", "secondary_open"),
    ],
)
def test_an_open_inside_a_winding_is_a_finding(text: str, finding: str) -> None:
    """Also when only the leads were asked about."""
    verdict = map_leads(told(text)).verdict

    assert verdict.finding == finding
    assert verdict.transformer == "bad"


def test_taps_before_the_open_still_work_and_it_is_replaced_all_the_same() -> None:
    """The last section is gone."""
    answer = map_leads(told("white black 20.4, white red 53, black red 32.9, red orange OL, blue yellow 1.2"))

    assert "Still working: 120, 208 V. Replace it all the same, it is failing" in [str(line) for line in answer.lines]


def test_no_tap_is_said_to_work_where_the_open_may_be_next_to_common() -> None:
    """One section of two is left, and it may as well be the one between 120 and 208."""
    supply = Fact(fact="supply_volts", value=208.0)
    answer = map_leads(told("black white OL, black red OL, white red 32.9, blue yellow 1.2", supply))

    assert "Which taps still work is not sure: land none of them, replace it" in [str(line) for line in answer.lines]


def test_kilohms_between_windings_ask_for_a_recheck_first() -> None:
    """No verdict on wet fingers."""
    answer = map_leads(told("white black 20.4, blue yellow 1.2, white blue 47000"))

    assert answer.verdict is None
    assert set(answer.next_test.leads) == {"white", "blue"}


def test_kilohms_read_twice_are_lost_insulation() -> None:
    """Dry and free, and still there."""
    job = told("white black 20.4, blue yellow 1.2, white blue 47000")
    again = Job(readings=(*job.readings, Reading(measure="lead_ohms", value=46000.0, leads=("white", "blue"))))

    assert map_leads(again).verdict.finding == "windings_bridged"


def test_a_back_fed_transformer_is_recognised() -> None:
    """24 V on the secondary and line voltage on the primary leads."""
    job = told("white black 20.4, blue yellow 1.2")
    live = (
        Reading(measure="lead_volts", value=24.6, leads=("blue", "yellow")),
        Reading(measure="lead_volts", value=117.0, leads=("white", "black")),
    )

    assert "backfeed" in map_leads(Job(readings=(*job.readings, *live))).cautions


def test_a_nameplate_narrows_the_taps() -> None:
    """Three leads of a 208/240 unit."""
    text = "black red 53, black orange 66.7, red orange 13.9, blue yellow 1.2"

    assert roles(told(text, Fact(fact="nameplate_taps", value=(208.0, 240.0)))) | {"blue": "24", "yellow": "24"} == {
        "black": "common",
        "red": "208",
        "orange": "240",
        "blue": "24",
        "yellow": "24",
    }


def test_labels_alone_say_nothing_of_ohms() -> None:
    """No ohms per volt where none were read."""
    job = Job(facts=(label("black", "common"), label("red", "208"), label("orange", "240"), label("brown", "480")))

    assert not any("Ohms per volt" in str(line) for line in map_leads(job).lines)


def test_what_is_said_of_the_best_map_is_one_number() -> None:
    """How sure it is, and what the ratio test would read if it is right, in the same per cent."""
    lines = [str(line) for line in map_leads(told("a b 20, a c 46, b c 26.1, d e 1.2")).lines]
    sure = next(line.removeprefix("Sure: ") for line in lines if line.startswith("Sure: "))

    assert any(f"V there: A common, B 120 V, C 240 V ({sure})" in line for line in lines)


def test_no_lead_no_map() -> None:
    """Nothing was spoken of: how to read them is said."""
    answer = map_leads(Job(asks=("which_lead",)))

    assert answer.leads is None
    assert answer.next_test.measure == "lead_ohms"


@pytest.mark.parametrize("text", ["white black OL", "white black 20.4", "blue yellow 1.1", "white white 3"])
def test_little_is_answered_with_a_question(text: str) -> None:
    """One pair makes no map of a unit, and no error."""
    answer = map_leads(told(text))

    assert answer.lines


def test_a_declined_test_is_not_asked_again() -> None:
    """Another one, or a label."""
    job = told("a b 20.0, a c 46.0, b c 26.1, d e 1.1")
    first = map_leads(job).next_test
    second = map_leads(Job(readings=job.readings, declined=frozenset({(first.measure, first.leads)}))).next_test

    assert second is None or (second.measure, second.leads) != (first.measure, first.leads)


def test_six_leads_on_one_winding_are_put_in_order() -> None:
    """Fifteen pairs."""
    at = {"a": 0, "b": 20, "c": 35, "d": 41, "e": 48, "f": 95}
    rows = [f"{x} {y} {abs(at[x] - at[y]) + 0.2:.1f}" for x, y in itertools.combinations(at, 2)]
    found = map_leads(told(", ".join([*rows, "g h 1.1"]))).leads

    assert [lead for lead, _ in found.windings[0].leads] in (list("abcdef"), list("fedcba"))


def test_ten_leads_find_an_answer() -> None:
    """Two primaries, two secondaries and two strays."""
    answer = map_leads(told("a b 30, c d 31, e f 0.9, g h 0.9, i j OL"))

    assert answer.leads is not None


def test_marks_say_the_side_where_no_secondary_was_read() -> None:
    """H is the high side: two equal H windings are two primaries, however alone they stand."""
    found = map_leads(told("h1 h2 22, h3 h4 22.4")).leads

    assert [w.role for w in found.windings] == ["primary", "primary"]
