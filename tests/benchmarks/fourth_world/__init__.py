"""A fourth world: units wound by a winder, solved as the textbook's equivalent circuit. Nothing was ever fitted on it: it is for examination alone."""
