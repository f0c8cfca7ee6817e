"""One thin shell for each way in. No engineering, no wording, and none imports another."""
