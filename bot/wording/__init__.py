"""Every sentence that a technician reads, in every language."""
