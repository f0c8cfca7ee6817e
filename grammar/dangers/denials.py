"""What takes a danger back: a denial, a time long past, a thing that only might happen."""

from typing import Final

from grammar.dangers.phrases import BREAK, DENIALS, Found

_WEAK: Final = frozenset({"no"})
"""It denies what follows at once, or behind one of `_CARRIES`: "no heat, jumped the limit" denies the heat only."""
_CARRIES: Final = frozenset({
    "more", "sign", "signs", "of", "any", "smoke", "fire", "gas", "smell", "burning", "shock", "shocks", "or", "se", "lo", "le", "la", "los", "les", "me", "nos", "te", "voy", "vamos", "a", "he", "hay", "hubo", "es", "esta", "quiero",
    "vi", "veo", "huele", "olor", "sale", "salio", "un", "una", "el", "al", "de", "humo", "fuego", "llamas", "hice", "haya", "dio", "pienso", "pude", "necesito",
})  # fmt: skip
_TURNS: Final = frozenset(
    {
        "can",
        "could",
        "should",
        "so",
        "but",
        "then",
        "if",
        "and",
        "y",
        "puedo",
        "si",
        "pero",
        "entonces",
        "asi",
        "because",
        "porque",
        "que",
        "gotta",
        "need",
        "want",
        "had",
        "just",
        "nomas",
    }
)
"""Behind these another thing is said, which the denial does not reach."""
_OVER: Final = frozenset({"gone", "cleared", "stopped", "extinguished", "paro", "desaparecio"})
"""Said behind a danger: it is over."""
_REACH: Final = 4
_MIGHT: Final = frozenset({
    "will", "could", "might", "may", "would", "avoid", "afraid", "scared", "risk", "worried", "can", "podria", "puede", "puedo", "evitar",
    "miedo", "riesgo", "hazard", "dont",
})  # fmt: skip
MIGHT_BE: Final = frozenset({"shock", "arc_flash"})
"""Dangers that are spoken of where nothing happened."""
PASSES: Final = frozenset({"shock", "smoke", "arc_flash", "burning_smell", "fire", "somebody_hurt", "charged_capacitor"})
"""Dangers that are over when they are long ago. A smell of gas is not."""


def is_denied(found: Found, words: tuple[str, ...], *, denies: bool = False) -> bool:
    """
    True where the words around it say that it is not so.

    Args:
        found: A phrase in the text.
        words: The text.
        denies: True where the phrase has a denial of its own.
    """
    if not denies and _is_denied_inside(found, words):
        return True
    return _is_denied_behind(words[found.end : found.end + 3]) or _is_denied_before(found, words)


def _is_denied_inside(found: Found, words: tuple[str, ...]) -> bool:
    """Reads "the fuse was not jumped": the denial stands right before what would be done."""
    return any(words[at] in DENIALS for at in range(max(found.start + 1, found.end - 2), found.end - 1))


def _is_denied_behind(after: tuple[str, ...]) -> bool:
    """Reads "smoke: none", "shock? no" and "the smell is gone"."""
    clause = after[: after.index(BREAK)] if BREAK in after else after
    if any(word in _OVER for word in clause):
        return True
    said = after[1:] if after[:1] == (BREAK,) else after
    return said[:1] in {("no",), ("none",)} and said[1:2] in {(), (BREAK,)}


def _is_denied_before(found: Found, words: tuple[str, ...]) -> bool:
    for at in range(found.start - 1, max(found.start - 1 - _REACH, -1), -1):
        if words[at] == BREAK or words[at] in _TURNS:
            return False
        if words[at] in DENIALS:
            return not (at > 0 and words[at - 1] == "why") and words[at + 1] not in {"only", "i", "we"}
        if words[at] in _WEAK:
            return all(word in _CARRIES for word in words[at + 1 : found.start])
    return False


def might_only_be(found: Found, words: tuple[str, ...]) -> bool:
    """
    True where it is feared, asked or avoided, and did not happen.

    Args:
        found: A phrase in the text.
        words: The text.
    """
    before = words[max(0, found.start - 5) : found.start]
    clause = before[len(before) - before[::-1].index(BREAK) :] if BREAK in before else before
    return any(word in _MIGHT for word in clause) or "hazard" in words[found.end : found.end + 2]


def sentence(found: Found, words: tuple[str, ...]) -> tuple[str, ...]:
    """
    The words between the pauses around a phrase.

    Args:
        found: A phrase in the text.
        words: The text.
    """
    start = max((at + 1 for at in range(found.start) if words[at] == BREAK), default=0)
    end = min((at for at in range(found.end, len(words)) if words[at] == BREAK), default=len(words))
    return words[start:end]
