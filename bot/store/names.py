"""What a unit or job is called, and whether two ways of writing it are one."""

import re

WIDEST = 80
"""As long as a name may be; the rest of it is cut. [characters]"""


def called(name: str) -> str:
    """
    A name without case, dashes and spacing.

    >>> called("RTU-3  Library")
    'rtu 3 library'
    """
    return " ".join(re.findall(r"\w+", name.casefold()))[:WIDEST]


def means(asked: str, name: str) -> bool:
    """
    Whether someone who asks for `asked` can mean `name`: each of its words is one of the name's.

    >>> means("rtu 3", "RTU-3 library"), means("rtu 3", "rtu 33")
    (True, False)
    """
    words = set(called(asked).split())
    return bool(words) and words <= set(called(name).split())
