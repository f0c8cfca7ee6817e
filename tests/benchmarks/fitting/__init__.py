"""How the belief and the worth of each step are fitted: simulated calls without end, and the descent on them."""
