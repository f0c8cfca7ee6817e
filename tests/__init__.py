"""The tests mirror the folders; checks against the outside world live in `tests/handbook`."""
