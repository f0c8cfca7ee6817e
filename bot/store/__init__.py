"""The log of jobs: typed tables, migrations, and the few verbs on them."""
