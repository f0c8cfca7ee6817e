"""Whatever is thrown at it: no exception, no unsafe number."""

from hypothesis import given, settings
from hypothesis import strategies as st

from core.readings import ASKS, Fact, Job
from core.sizing import size
from core.standards.device_loads import DEVICE_LOADS

NUMBERS = st.one_of(st.floats(-1e5, 1e5), st.floats(0.5, 500.0), st.sampled_from([0.0, 24.0, 120.0, 18.0, float("inf")]))
LOADS = st.builds(
    Fact,
    fact=st.just("load"),
    device=st.sampled_from([*DEVICE_LOADS, "flux box"]),
    count=st.one_of(st.none(), st.integers(-2, 200)),
    value=st.one_of(st.none(), NUMBERS),
    unit=st.sampled_from([None, "VA", "A", "W"]),
    inrush=st.one_of(st.none(), NUMBERS),
)
FIGURES = st.builds(
    Fact,
    fact=st.sampled_from(
        [
            "rated_va",
            "rated_secondary_volts",
            "supply_volts",
            "tap_volts",
            "run_feet",
            "wire_awg",
            "fuse_amps",
            "copper_celsius",
            "supply_hertz",
        ]
    ),
    value=NUMBERS,
)


@settings(max_examples=400, deadline=None)
@given(st.lists(st.one_of(LOADS, FIGURES), max_size=8), st.lists(st.sampled_from(ASKS), max_size=3))
def test_any_mix_is_answered_or_refused(facts: list[Fact], asks: list[str]) -> None:
    """Every line can be said, and what is named keeps to the limits."""
    answer = size(Job(facts=tuple(facts), asks=tuple(asks), fresh=frozenset(f.fact for f in facts)))
    if answer is None:
        return
    said = [str(line) for line in answer.lines]

    assert answer.sizing is not None
    assert "nan" not in " ".join(said)
    if answer.sizing.pick_va is not None:
        assert answer.sizing.load_va is not None
        assert 1.25 * answer.sizing.load_va <= answer.sizing.pick_va + 1e-6 <= 100.0 + 1e-6
    if answer.sizing.class2 is False:
        assert answer.sizing.pick_va is None or {"rated_va", "rated_secondary_volts"} & {f.fact for f in facts}
