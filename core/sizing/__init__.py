"""What to buy and how to put it in."""
