"""One text's phrases while they get their roles."""

from grammar.phrase import Phrase

JOINS = frozenset({"to", "dash", "slash"})
ENDS = frozenset({"place", "colour", "mark"})


class Row:
    """The phrases and where the labelling stands."""

    def __init__(self, phrases: list[Phrase], *, spanish: bool) -> None:
        """Takes the phrases of `scan`; they are changed in place."""
        self.phrases = phrases
        self.spanish = spanish
        self.at = 0

    def kind(self, at: int) -> str:
        """Kind of a phrase, empty beyond the ends."""
        return self.phrases[at].kind if 0 <= at < len(self.phrases) else ""

    def glued(self, at: int) -> bool:
        """True where a phrase sticks to the one before it."""
        return 0 < at < len(self.phrases) and self.phrases[at].start == self.phrases[at - 1].end
