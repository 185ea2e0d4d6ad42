"""The two families of error: what the user can mend, and our own fault.

Anything that is not a `MendableError` and reaches a face of the program is our fault. The faces
show the first kind as it is and turn the second into a report that can be copied.
"""

__all__ = ["MendableError"]


class MendableError(Exception):
    """Something in the input is off, and the user can put it right.

    Parameters
    ----------
    what
        What is wrong, one sentence in the painter's words, with the value that is off.
    mend
        What to do about it, one sentence.
    """

    def __init__(self, what: str, mend: str) -> None:
        super().__init__(f"{what} {mend}")
        self.what = what
        self.mend = mend
