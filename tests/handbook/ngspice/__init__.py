"""Netlists of the circuits that the plant is checked on, and what ngspice computed for them."""
