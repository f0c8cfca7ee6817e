"""What a technician reports that is none of the measures and still decides the call: one row each, with the answer to it."""
