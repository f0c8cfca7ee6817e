"""Dangers in the words of a text: the door is `dangers_in`."""

from grammar.dangers.harmless import harmless
from grammar.dangers.read import Warned, dangers_in

__all__ = ["Warned", "dangers_in", "harmless"]
