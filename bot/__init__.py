"""Everything with a wire or a disk."""
