"""The trade's words as data, by meaning, English and Spanish side by side."""
