"""What can hurt: recognised from words and readings, answered before anything else."""

from core.dangers.answer import DangerAnswer, Standing, is_firm, respond
from core.dangers.danger import Danger
from core.dangers.recognise import from_readings, from_words
from core.dangers.table import DANGERS, table_rows

__all__ = ["DANGERS", "Danger", "DangerAnswer", "Standing", "from_readings", "from_words", "is_firm", "respond", "table_rows"]
