"""Text of the field in, core's vocabulary out."""
