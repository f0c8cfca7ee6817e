"""Turns a field message into core's readings and facts. The door is `read`."""

from grammar.message import Context, Message, Unclear
from grammar.nearest import nearest
from grammar.reader import read

__all__ = ["Context", "Message", "Unclear", "nearest", "read"]
