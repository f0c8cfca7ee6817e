"""
One thread for the linear algebra. Import this before numpy.

The arrays of a reply are small: handing them to several threads costs more than it saves, measured at twice the CPU a reply.
What the environment sets already is left.
"""

import os

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS", "VECLIB_MAXIMUM_THREADS"):
    os.environ.setdefault(name, "1")
