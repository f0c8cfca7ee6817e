"""The physical model of the circuit: one model, many questions."""
