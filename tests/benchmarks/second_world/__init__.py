"""
A second simulated world, by another hand: written without sight of the engine, with its own priors, its own nodal solver, its own meter and technician.

The engine was not made on it, so that it is not tuned to one bench alone. The solver is held to circuits worked out by hand in
`tests/benchmarks/test_second_world.py`.
"""
