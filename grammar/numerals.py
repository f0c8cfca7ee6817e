"""The value of a number as it was written or said."""

from collections.abc import Sequence
from typing import Final, Literal

from grammar.phrase import Amount, Phrase

BOUNDS: Final[dict[str, Literal["about", "over", "under"]]] = {"about": "about", "over": "over", "under": "under"}


def amount_of(before: Sequence[Phrase], number: Sequence[Phrase], unit: Phrase | None) -> Amount:
    """The amount that the words make."""
    whole = [p for p in number if p.kind != "fraction"]
    fractions = [p.meaning for p in number if p.kind == "fraction"]
    fraction = sum(float(meaning) for meaning in fractions if meaning != "tenths")
    if len(whole) == 1 and whole[0].kind == "numeral":
        value, doubt, other = written(whole[0].meaning)
    else:
        words = [p.meaning for p in whole]
        value, doubt, other = said([w.rstrip("!") for w in words])
        if words[0].endswith("!") and len(words) > 1:
            doubt, other = "sound", said(words[1:])[0]
    if doubt is None and any(p.text == "con" for p in whole):
        doubt = "split"  # two numbers, or a point
    value = round(value / 10, 9) if "tenths" in fractions else value
    bounds = [p.meaning for p in before]
    if "minus" in bounds:
        value, doubt, other = -value, "minus", value
    end = max(p.end for p in (*number, *((unit,) if unit else ())))
    amount = Amount(value + fraction, (before or number)[0].start, end, spoken=whole[0].kind != "numeral")
    amount.unit = unit.meaning if unit else None
    amount.unit_text = unit.text if unit else ""
    amount.bound = next((BOUNDS[b] for b in bounds if b in BOUNDS), None)
    amount.doubt, amount.other = doubt, other
    amount.text = whole[0].meaning if len(whole) == 1 else ""
    return amount


def written(figures: str) -> tuple[float, str | None, float | None]:
    """
    Figures with points and commas: (value, doubt, the other value).

    >>> written("24.6"), written("26,4"), written("1,200"), written("1,200.5")
    ((24.6, None, None), (26.4, None, None), (1200.0, 'comma', 1.2), (1200.5, None, None))
    """
    figures, _, power = figures.lower().partition("e")
    if power:
        value, doubt, _ = written(figures)
        return value * 10.0 ** min(int(power), 30), doubt, None
    marks = [c for c in figures if c in ".,"]
    if not marks:
        return float(figures), None, None
    last = figures.rpartition(marks[-1])
    if len(marks) == 1:
        value = float(f"{last[0] or '0'}.{last[2]}")
        if marks[0] == "," and len(last[2]) == 3 and last[0].lstrip("0"):
            return float(last[0] + last[2]), "comma", value
        return value, None, None
    if len(set(marks)) == 1:
        groups = figures.split(marks[0])
        if all(len(group) == 3 for group in groups[1:]):
            return float("".join(groups)), None, None
        return float(f"{groups[0]}.{groups[1]}"), "split", None
    return float(f"{last[0].replace('.', '').replace(',', '')}.{last[2]}"), None, None


def said(words: Sequence[str]) -> tuple[float, str | None, float | None]:
    """
    A number in words, each word by its value, a point as ".".

    >>> said(["1", "18"])[0], said(["20", "4", ".", "6"])[0], said(["2", "0", "8"])[0], said(["100", "19"])[0], said([".", "9"])[0]
    (118.0, 24.6, 208.0, 119.0, 0.9)
    """
    point = words.index(".") if "." in words else len(words)
    before, behind = words[:point], words[point + 1 :]
    if len(before) == 1 and before[0].count(".") == 1:
        return float(before[0]), None, None
    value, doubt, other = _whole(before) if before else (0.0, None, None)
    if behind:
        digits = "".join(str(int(float(chunk))) for chunk in _chunks(behind))
        return float(f"{int(value)}.{digits or '0'}"), doubt, other
    return value, doubt, other


def _chunks(words: Sequence[str]) -> list[float]:
    """Tens and ones put together: 20 4 -> 24."""
    chunks: list[float] = []
    tens = False
    for word in words:
        number = float(word)
        if tens and 1 <= number <= 9:
            chunks[-1] += number
            tens = False
        else:
            chunks.append(number)
            tens = number in {20, 30, 40, 50, 60, 70, 80, 90}
    return chunks


def _whole(words: Sequence[str]) -> tuple[float, str | None, float | None]:
    chunks = _chunks(words)
    if any(chunk >= 100 for chunk in chunks):
        return _hundreds(chunks), None, None
    if len(chunks) == 1:
        return chunks[0], None, None
    joined = "".join(str(int(chunk)) for chunk in chunks)
    if len(chunks) == 2 and chunks[0] >= 10:
        return float(f"{int(chunks[0])}.{int(chunks[1])}"), "split", float(joined)  # "twenty four sixty": 24.60 or 2460
    return float(joined[:12]), None, None


def _hundreds(chunks: Sequence[float]) -> float:
    total = current = 0.0
    for chunk in chunks:
        if chunk in {100.0, 1000.0, 1e6}:
            current = (current or 1.0) * chunk
            if chunk > 100.0:
                total, current = total + current, 0.0
        else:
            current += chunk
    return total + current
