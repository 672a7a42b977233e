"""What side-lines are called in print: A, B, …; A1, A2, … in A; A1a, A1b, … in A1."""

from __future__ import annotations


def side_line_label(above: str, depth: int, number: int) -> str:
    """The label of a side-line: letters and figures in turn.

    above: the label of the line that it branches off from; depth: its own, from 1; number: among its like, from 1
    """
    if depth % 2 == 0:
        return f"{above}{number}"
    letters = ""
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return above + (letters if depth == 1 else letters.lower())
