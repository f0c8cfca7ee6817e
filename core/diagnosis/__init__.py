"""From readings to the probability of each finding, the next test, and the reasons."""
