"""Whole jobs in an invented scenario, played by `ohmreply replay` and by the tests."""
