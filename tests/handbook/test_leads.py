"""Leads and taps held to published laws, tests and values. Each check names its source."""

import math

import pytest

from core.leads import choose_tap, estimate_va, map_leads
from core.leads.clues import nominal
from core.readings import Fact, Job, Reading
from tests.core.leads.test_answer import told

# Sections of one winding are in series, so their ohms add. Source: DOE-HDBK-1011/1, resistances in series; on a tapped winding
# R(C-208) = R(C-120) + R(120-208).
# Common practice, no source: 20, 53 and 66.5 ohm from common to 120, 208 and 240 V.
COMMON_PRACTICE_OHM = {"120": 20.0, "208": 53.0, "240": 66.5}


def test_common_practice_ohms_are_recognised_from_common_alone() -> None:
    """Three readings from common, the rest inferred."""
    pairs = ", ".join(f"c {name} {ohm}" for name, ohm in zip("xyz", COMMON_PRACTICE_OHM.values(), strict=True))
    found = map_leads(told(f"{pairs}, p q 1.1", rest_open=False)).leads

    assert found.windings[0].leads == (("c", "common"), ("x", "120"), ("y", "208"), ("z", "240"))


def test_sections_that_add_up_are_neighbours() -> None:
    """20 and 33 make 53, 33 and 13.5 make 46.5: the leads lie in this order."""
    ohm = COMMON_PRACTICE_OHM
    text = (
        f"n m {ohm['208'] - ohm['120']}, k m {ohm['208']}, n l {ohm['240'] - ohm['120']}, k n {ohm['120']}, "
        f"m l {ohm['240'] - ohm['208']}, k l {ohm['240']}, p q 1.1"
    )
    order = [lead for lead, _ in map_leads(told(text)).leads.windings[0].leads]

    assert order == ["k", "n", "m", "l"]


# Turns are volts: Np/Ns = Vp/Vs. Source: DOE-HDBK-1011/4, equation 13-5; 240 V on 250 turns gives 48 V on 50 (ES-13 p. 6, ex. 2).
@pytest.mark.parametrize(("fed_v", "fed_turns", "read_turns", "published_v"), [(240.0, 250, 50, 48.0), (120.0, 200, 20, 12.0)])
def test_taps_follow_the_turns_ratio(fed_v: float, fed_turns: float, read_turns: float, published_v: float) -> None:
    """A unit whose tap has the turns of the example gives its volts."""
    job = Job(
        facts=(
            Fact(fact="supply_volts", value=fed_v),
            Fact(fact="nameplate_taps", value=(fed_v,)),
            Fact(fact="rated_secondary_volts", value=fed_v * read_turns / fed_turns),
        )
    )
    low, high = choose_tap(job).leads.land.volts_out

    assert low < published_v < high


# Derived from that law: 24 V x supply / tap. 240 on 208: 27.7; 208 on 240: 20.8; 277 on 240: 27.7; 240 on 120: 48; 208 on 120: 41.6.
@pytest.mark.parametrize(
    ("supply_v", "tap_v", "out_v"), [(240, 208, 27.7), (208, 240, 20.8), (277, 240, 27.7), (240, 120, 48.0), (208, 120, 41.6)]
)
def test_a_wrong_tap_gives_the_volts_of_its_turns(supply_v: float, tap_v: float, out_v: float) -> None:
    """As told in the lines."""
    facts = (Fact(fact="supply_volts", value=float(supply_v)), Fact(fact="nameplate_taps", value=(float(tap_v),)))
    lines = [str(line) for line in choose_tap(Job(facts=facts)).lines]

    assert any(line.startswith(f"{tap_v} V tap: {out_v:.1f} V at rated load") for line in lines)


# Coils work from 85 to 110 % of their rated volts. Source: TM 5-683 / NAVFAC MO-116, chapter 5: 20.4 to 26.4 V of 24.
@pytest.mark.parametrize(("supply_v", "verdict"), [(204.0, "right"), (203.9, "too low"), (264.0, "right"), (264.2, "too high")])
def test_the_coil_range_decides_what_a_tap_is_good_for(supply_v: float, verdict: str) -> None:
    """On the 240 V tap, just inside and just outside."""
    facts = (Fact(fact="nameplate_taps", value=(240.0,)),)
    answer = choose_tap(Job(readings=(Reading(measure="line_volts", value=supply_v),), facts=facts))
    line = next(str(line) for line in answer.lines if "240 V tap:" in str(line))

    assert verdict in line or (verdict == "right" and "coil range" in line)


# A 208 V control transformer is tried at 208 plus or minus 20.8 V and gives 23.5 plus or minus 0.7 V. Source: TM 9-4120-401-14, 4-39.
@pytest.mark.parametrize(("supply_v", "fits"), [(187.5, True), (228.0, True), (186.0, False), (231.0, False)])
def test_a_tap_fits_within_the_manuals_tenth(supply_v: float, *, fits: bool) -> None:
    """208 V alone on the nameplate."""
    job = Job(readings=(Reading(measure="line_volts", value=supply_v),), facts=(Fact(fact="nameplate_taps", value=(208.0,)),))

    assert choose_tap(job).leads.land.fits is fits


def test_the_manuals_output_lies_in_the_range_that_is_promised() -> None:
    """23.5 V at 208 V, the unit of TM 9-4120-401-14, 4-39."""
    facts = (Fact(fact="supply_volts", value=208.0), Fact(fact="nameplate_taps", value=(208.0,)))
    low, high = choose_tap(Job(facts=facts)).leads.land.volts_out

    assert low <= 23.5 <= high


# A primary of two windings: 240 V with the coils in parallel, 480 V with them in series. Source: TM 5-6115-593-34, paragraph 5-3.
@pytest.mark.parametrize(("supply_v", "how"), [(240.0, "parallel"), (480.0, "series")])
def test_a_dual_primary_is_joined_as_the_manual_does(supply_v: float, how: str) -> None:
    """Two windings of 240 V."""
    facts = (
        Fact(fact="supply_volts", value=supply_v),
        Fact(fact="nameplate_taps", value=(240.0, 480.0)),
        Fact(fact="rated_va", value=50.0),
    )
    answer = choose_tap(told("h1 h2 82, h3 h4 84, x1 x2 0.9", *facts))

    assert any(how in str(line) for line in answer.lines)


# Every output of a tapped unit lies within 3 % or it is replaced. Source: TM 9-6115-464-34 family, transformer T103: 120 V on 1-2, then 1-3,
# then 1-4. So turns read by volts within 3 % must still tell the taps apart.
@pytest.mark.parametrize("error", [-0.03, 0.0, 0.03])
def test_volts_within_three_percent_still_tell_the_tap(error: float) -> None:
    """12.0 of 24 V is the middle of 240, 13.8 would be that of 208."""
    base = told("a b 20.0, a c 46.0, b c 26.1, d e 1.1")
    live = tuple(
        Reading(measure="lead_volts", value=round(v, 1), leads=p)
        for p, v in ((("a", "c"), 24.0), (("a", "b"), 12.0 * (1.0 + error)))
    )
    found = map_leads(Job(readings=(*base.readings, *live))).leads

    assert ("c", "240") in found.windings[0].leads


# Test leads add 0.2 to 0.5 ohm unless nulled. Source: multimeter manuals on resistance measurement.
@pytest.mark.parametrize("leads_ohm", [0.0, 0.2, 0.5])
def test_test_leads_do_not_move_the_map(leads_ohm: float) -> None:
    """Added to every pair."""
    at = {"a": 0.0, "b": 5.0, "c": 8.8, "d": 10.3}
    text = ", ".join(f"{x} {y} {abs(at[x] - at[y]) + leads_ohm:.1f}" for x in at for y in at if x < y)
    found = map_leads(told(f"{text}, e f {0.4 + leads_ohm:.1f}")).leads

    assert [lead for lead, _ in found.windings[0].leads] == list("abcd")


# Primary over secondary ohms, high over low: the normal pattern of a step-down. Source: TM 9-6115-464-34: winding 1-2 6.77 ohm (6.093 to 7.447
# passes), 3-5 0.108 ohm (0.0972 to 0.1188 passes).
@pytest.mark.parametrize("primary_ohm", [6.1, 6.77, 7.4])
def test_the_winding_of_more_ohms_is_the_primary(primary_ohm: float) -> None:
    """The manual's own unit, 230 to 14.8 V, anywhere in the manual's limits."""
    job = told(f"1 2 {primary_ohm}, 3 5 0.1", Fact(fact="rated_secondary_volts", value=14.8))

    assert {lead for lead, _ in map_leads(job).leads.windings[0].leads} == {"1", "2"}


# The same unit gives 14.75 V of 230 (14.652 to 14.948 passes), so 24 V across the primary reads 24 x 14.8 / 230 = 1.54 V at the secondary.
# A 120 V primary would read twice as much. Sources: TM 9-6115-464-34; DOE-HDBK-1011/4, equation 13-5.
def test_a_ratio_test_tells_a_240_volt_primary_from_a_120_volt_one() -> None:
    """Volts divide as turns do."""
    base = told("1 2 6.77, 3 5 0.1", Fact(fact="rated_secondary_volts", value=14.8))
    live = tuple(Reading(measure="lead_volts", value=v, leads=p) for v, p in ((24.0, ("1", "2")), (1.55, ("3", "5"))))
    volts = dict(map_leads(Job(readings=(*base.readings, *live), facts=base.facts)).leads.windings[0].leads)["1"]

    assert volts in {"208", "240"}


# Maryland service limits (COMAR 20.50.07.02): 114 to 126, 197 to 219, 228 to 252, 249 to 291, 432 to 504 V.
@pytest.mark.parametrize(
    ("volts", "system"),
    [(114, 120), (126, 120), (197, 208), (219, 208), (228, 240), (252, 240), (263, 277), (291, 277), (432, 480), (504, 480)],
)
def test_service_limits_belong_to_their_system(volts: float, system: float) -> None:
    """Each lawful supply is called by its name; 249 to 252 V is 240 as well as low 277."""
    assert nominal(float(volts)) == system


# 240 V line, high leg of a delta to neutral: 120 x sqrt 3 = 207.8 V. Source: NEC 110.15 marks that leg; the value is geometry.
def test_the_high_leg_is_recognised_at_its_geometric_volts() -> None:
    """Beside 120 V to neutral."""
    readings = tuple(Reading(measure="line_volts", value=round(v, 1)) for v in (120.0, 120.0 * math.sqrt(3.0)))

    assert "high_leg" in choose_tap(Job(readings=readings, facts=(Fact(fact="nameplate_taps", value=(208.0, 240.0)),))).cautions


# 27.3 V no load on a 24 V unit is a textbook's good unit. Source: McPherson, ex. 1.7, p. 10: 13.75 % regulation.
def test_a_textbook_open_voltage_speaks_for_a_small_unit() -> None:
    """Much copper loss, so not 100 VA."""
    job = Job(readings=(Reading(measure="secondary_volts_lifted", value=27.3),))
    line = str(estimate_va(job).lines[0])

    assert "100" not in line
