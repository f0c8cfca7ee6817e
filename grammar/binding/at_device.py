"""What a value at a device is: of its coil, of the control circuit, across a switch, or none of ours."""

from core.heard.record import Heard
from core.readings import Reading
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import DEVICE_PLACES, MEASURE_AT
from grammar.binding.plausible import fits_live


def at_device(draft: Draft, figure: Figure, site: Site) -> None:
    """Gives the figure the place that it is of, a reading in doubt, or tells it as unread."""
    place = DEVICE_PLACES.get(site.name)
    known = place is not None and place != "switch"
    if site.name == "thermostat" and figure.kind == "nothing" and _is_volts_beside_others(draft, figure, "control"):
        figure.site = Site(site.at, "place", "control")  # "24.9 at the board, nothing at the stat"
    elif (known and figure.kind == "amount" and (figure.unit == "V" or (figure.unit == "ohm" and place == "coil"))) or (
        known and figure.kind == "nothing" and site.name != "thermostat" and "power" not in draft.phrases[figure.at].text
    ):
        figure.site = Site(site.at, "place", str(place))
    elif figure.kind in {"open", "good", "short", "nothing"}:
        figure.done = True
        if figure.kind != "good":
            say_unread(draft, figure, site)
    elif figure.unit is None and draft.clause[site.at] != draft.clause[figure.at] and draft.kind(figure.at - 1) != "is":
        figure.done = True
        say_unread(draft, figure, site)
    elif figure.unit is None:
        figure.done = True
        if known and _is_volts_beside_others(draft, figure, str(place)):
            figure.done, figure.unit, figure.unit_from = False, "V", "neighbour"
            figure.site = Site(site.at, "place", str(place))
        elif known and 16 <= figure.value <= 32 and (figure.value != int(figure.value) or _is_led(draft, figure, site)):
            reading = Reading(measure=MEASURE_AT[str(place)]["V"], value=figure.value, assumed=True)
            draft.readings.append(reading)
        else:
            say_unread(draft, figure, site)
            _across(draft, figure, site)
    else:
        figure.done = True
        say_unread(draft, figure, site)
        _across(draft, figure, site)


def _is_led(draft: Draft, figure: Figure, site: Site) -> bool:
    """In "26 at the board", "board has 25": a bare whole number that a small word leads to the device, no temperature of a room."""
    if site.name == "thermostat":
        return False
    if figure.at < site.at:
        return draft.kind(figure.at + 1) == "at"
    return (
        site.at < figure.at and draft.kind(figure.at - 1) == "reads" and draft.kind(figure.at + 1) not in {"device", "filler"}
    )


def _is_volts_beside_others(draft: Draft, figure: Figure, place: str) -> bool:
    """In "27 at transformer, 0 at stat": a bare number at a device, where volts are told of another place."""
    others = [f for f in draft.around(figure.at) if f is not figure and f.kind == "amount"]
    if figure.kind == "amount" and 16 <= figure.value <= 32:
        return any(f.unit == "V" for f in others)
    live = any(
        f.site is not None and f.unit in {None, "V"} and fits_live(DEVICE_PLACES.get(f.site.name, f.site.name), f.value)
        for f in others
    )
    return place == "control" and figure.value == 0 and live


MENDED = frozenset({"back", "through", "new", "fixed", "cleaned", "flushed", "reset", "nuevo", "limpie", "arregle"})
"""Words with which volts at a switch are those that came back, and not those across it."""


def _across(draft: Draft, figure: Figure, site: Site) -> None:
    """Volts across a switch, said or to be taken for such: kept beside the unread, for they name the break."""
    is_volts = figure.unit == "V" or (figure.unit is None and figure.kind == "amount" and 16 <= figure.value <= 32)
    mended = any(p.text in MENDED for p in draft.phrases)
    if DEVICE_PLACES.get(site.name) == "switch" and is_volts and not mended:
        draft.heard.append((draft.unread[-1], Heard("across", site.name, "", (float(figure.value),), "V")))


def say_unread(draft: Draft, figure: Figure, site: Site) -> None:
    """Tells a value with its place as unread."""
    phrase = draft.phrases[site.at]
    draft.unread.append((min(phrase.start, figure.start), max(phrase.end, figure.end)))
