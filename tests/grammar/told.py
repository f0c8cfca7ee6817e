"""What a message told of a fact."""

from grammar import Message


def told(message: Message, name: str) -> list[object]:
    """The values of all facts of a name."""
    return [f.value for f in message.facts if f.fact == name]
