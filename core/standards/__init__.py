"""Published values, one file a table, the source on top of each."""
