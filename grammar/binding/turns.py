"""Symptoms, dangers and asks, by the turns of phrase that tell them."""

from grammar.binding.asked import asked
from grammar.binding.draft import Draft
from grammar.binding.symptoms import symptoms, symptoms_of_dangers
from grammar.dangers import dangers_in


def turns(draft: Draft) -> None:
    """Fills symptoms, dangers and asks."""
    symptoms(draft, draft.words, draft.owners)
    draft.warned = dangers_in(draft.text, draft.context.said_before)
    symptoms_of_dangers(draft)
    asked(draft, draft.words)
