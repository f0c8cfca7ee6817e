"""Benchmarks: run by hand, each prints what it measured."""
