"""A simulated technician at simulated units, written apart from the engine: its own circuit, priors, meter and habits."""
