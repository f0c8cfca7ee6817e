"""Shapes as data, drawn to PNG."""
