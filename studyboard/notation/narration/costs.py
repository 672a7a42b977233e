"""What each way of understanding costs the search, as unlikelihood; chosen by hand on talks that may be looked at."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final


@dataclass(frozen=True, slots=True)
class Costs:
    """The weights of the search; all in one unit, roughly a natural logarithm of odds."""

    # Passing words over that could say a move.
    square: float = 2.5
    piece: float = 0.6
    capture: float = 1.3
    capture_loosely: float = 0.5
    castles: float = 2.4
    written: float = 3.6
    check: float = 0.5
    promotes: float = 0.25

    # Names of what is there or was just played.
    stands: float = 0.1
    stands_bare: float = 0.4
    just_played: float = 0.25
    said_more_closely: float = -0.9
    said_again: float = 0.3
    said_twice: float = 1.0
    named_despite_return: float = 1.0
    longer_ago: float = 0.5
    remembered: int = 6

    # Words that are left out of a phrase which they touch.
    piece_left_out: float = 0.9
    clear_piece_left_out: float = 3.0
    link_left_out: float = 1.0
    letter_left_out: float = 0.7
    clear_letter_left_out: float = 1.5
    capture_left_out: float = 2.0
    square_left_out: float = 1.3

    # Leaving a line.
    branches: float = 4.2
    branches_least: float = 0.5
    cue_to_branch: float = 4.2
    branch_at: tuple[float, ...] = (0.35, 0.25, 1.6, 2.3, 2.8, 3.1, 3.3, 3.5)
    at_the_number: float = 0.1
    at_another_number: float = 1.0
    misnumbered: float = 1.5
    branch_reach: int = 5
    branch_reach_with_cue: int = 16
    alternative: float = 0.9
    alternative_ignored: float = 1.6
    alternative_further: float = 0.4
    in_place_of_another: float = 0.8
    rejected_and_told: float = 1.4
    nested: float = 0.4
    each_level_left: float = 0.9
    sibling: float = 0.2
    side_line_goes_on: float = 0.12
    each_level: float = 0.5

    # Coming back.
    returns: float = 2.0
    returns_least: float = 0.1
    cue: float = 2.0
    returns_after_sentence: float = 0.35
    returns_after_paragraph: float = 0.8
    returns_to_side_line: float = 0.3
    long_side_line: float = 0.12
    long_side_line_from: int = 10
    side_line_over_sentence: float = 0.3
    side_line_over_paragraph: float = 1.0
    left_open: float = 0.8
    left_open_each: float = 0.05
    never_came_back: float = 0.4
    never_came_back_each: float = 0.4
    short_line: int = 4
    nothing_played: float = 2.0

    # Not doing what a cue says.
    cue_ignored: float = 2.4
    cue_to_branch_ignored: float = 3.2
    weak_cue: float = 0.25
    known_despite_cue: float = 0.4
    bare_against: float = 0.3
    back_from_nowhere: float = 2.0

    # Moves that nobody said.
    traded: float = 0.3
    forced_unsaid: float = 1.3
    recapture_unsaid: float = 2.4
    unsaid_of_game: int = 8
    unsaid_first: float = 1.1
    unsaid_further: float = 0.5
    unsaid_before_vague: float = 0.8

    gap: float = 5.5
    gap_despite: float = 0.4
    gaps_tried: int = 3

    # The share of the unlikelihood of a move that counts: on the main line, in side-lines and at their beginning.
    unlikely: float = 0.25
    unlikely_aside: float = 0.25
    unlikely_first: float = 0.18

    # With the game at hand.
    expected: float = 0.6
    game_bonus: float = 0.4

    # What no reading that is kept costs more than the cheapest one: at a word, and within one step.
    worst: float = 12.0
    worst_step: float = 10.0

    # Where the best reading costs so much more than so many words before, the thread may have been lost.
    lost: float = 10.0
    lost_within: int = 60


@dataclass(frozen=True, slots=True)
class Width:
    """How many readings of a talk are kept at a word.

    most, far: at most so many, those near the cheapest one alone, and all of them
    near: what near ones cost more than the cheapest one, at most
    whatever: so many of any shape, and then only so few of each shape (of_each_shape)
    alike_near, alike_far: so many that do the same now, of those that are near, and of the others
    """

    most: int
    far: int
    near: float
    whatever: int
    alike_near: int
    alike_far: int = 4
    of_each_shape: int = 4


COSTS: Final = Costs()

USUAL_WIDTH: Final = Width(most=120, far=32, near=5.0, whatever=60, alike_near=8)
GREAT_WIDTH: Final = Width(most=300, far=64, near=7.0, whatever=150, alike_near=16)

#: Where a trained model judges the words too, the cues that were chosen by hand count for less.
_SHARE = 0.7
COSTS_BESIDE_HINTS: Final = replace(
    COSTS,
    cue=COSTS.cue * _SHARE,
    cue_ignored=COSTS.cue_ignored * _SHARE,
    cue_to_branch_ignored=COSTS.cue_to_branch_ignored * _SHARE,
    rejected_and_told=COSTS.rejected_and_told * _SHARE,
    cue_to_branch=COSTS.cue_to_branch * _SHARE,
    branches=3.63,
)
