"""From readings to the probability of each finding, the next test, and the reasons."""

from core.diagnosis.answer import diagnose
from core.diagnosis.explain import explain
from core.diagnosis.outlook import expect

__all__ = ["diagnose", "expect", "explain"]
