"""Writes the grammar's tables anew after a change of `message.lark`: `python -m grammar.write_tables`."""

from grammar.parser import write_tables

if __name__ == "__main__":
    write_tables()
