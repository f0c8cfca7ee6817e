"""Writes the tables anew after a change of `message.lark` or of the words of danger: `python -m grammar.write_tables`."""

from grammar.dangers import index, meanings
from grammar.parser import write_tables

if __name__ == "__main__":
    write_tables()
    index.write_tables()
    meanings.write_tables()
