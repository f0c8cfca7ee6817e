"""A sentence whose numbers and names are kept apart from its words, so that another language can set them in its own order."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Said:
    """One sentence of the engineering, in English, with named places for what varies."""

    template: str
    """English with `str.format` places. The message catalogues know the sentence by this text."""
    values: tuple[tuple[str, object], ...] = field(default=())
    """What stands in the places. A `Said` or a word of ours among them is translated too."""

    def __str__(self) -> str:
        return self.template.format(**{name: str(v) if isinstance(v, Said) else v for name, v in self.values})

    @property
    def named(self) -> Mapping[str, object]:
        """The values by name."""
        return dict(self.values)


def say(template: str, /, **values: object) -> Said:
    """
    A sentence with its values.

    Args:
        template: English sentence with `str.format` places.
        values: What stands in the places.

    >>> str(say("Secondary reads {volts:.1f} V", volts=24.04))
    'Secondary reads 24.0 V'
    """
    return Said(template, tuple(values.items()))
