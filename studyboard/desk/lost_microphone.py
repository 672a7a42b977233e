"""A microphone that went away, and where the talk goes on when it is back."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class LostMicrophone:
    """What was lost, and when.

    device: how the system knows it
    name: how it is shown to people
    beat: index of the beat that was being told; None where nothing was recorded
    """

    device: str
    name: str
    beat: int | None

    @property
    def is_gone(self) -> str:
        """What to do now, in a sentence."""
        if self.beat is None:
            return tr("The microphone “{name}” is gone. Plug it in again, or choose another one.", name=self.name)
        return tr(
            "The microphone “{name}” is gone. Plug it in again, or choose another one: Space then records this beat "
            "anew, in a following take.",
            name=self.name,
        )

    @property
    def is_back(self) -> str:
        """That it is there again, in a sentence."""
        if self.beat is None:
            return tr("The microphone “{name}” is back.", name=self.name)
        return tr("The microphone “{name}” is back. Space records this beat anew, in a following take.", name=self.name)
