"""The engineering: pure, no clock, no files, no network. This door lists what others may use."""
