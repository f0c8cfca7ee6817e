"""A third world: service, transformer and control circuit as one nodal network, by a hand that knew neither the engine nor the other worlds."""
