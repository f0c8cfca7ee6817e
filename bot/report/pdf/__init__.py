"""The report laid out on paper."""
