"""From phrases to meaning: which amount belongs to which place, and what that makes of it."""
