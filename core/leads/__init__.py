"""Which lead is which."""
