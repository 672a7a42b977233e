"""What a presenter should do about the room and the microphone, in sentences."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from studyboard.sound.levelling import Target
from studyboard.sound.loudness import Loudness
from studyboard.sound.room import RoomSound
from studyboard.translation import tr

#: Noise of a room that nobody hears behind a voice, and of one that is heard in every pause (dBFS, RMS): common
#: practice of people who record speech.
QUIET, LOUD = -60.0, -50.0
#: The same after the voice was brought to its loudness: what the listener gets.
_HEARD, _DISTURBS = -55.0, -45.0
#: What lies below this is no larger than the smallest step of a sample of 16 bits (dBFS), so nobody can hear it.
_BELOW_HEARING = -90.0
#: Where a voice should peak (dBTP), so that a laugh is not cut off, and how loud it should be at least (LUFS).
_TOO_HOT, _TOO_FAINT = -3.0, -40.0
#: Loudness that leaves room above and below (LUFS): common practice for the take, not for what is delivered.
_GOOD_TAKE = -24.0
#: Below so many samples a second consonants are lost (Hz): a headset without a cable delivers 16,000 or 8,000.
_NARROW = 32_000


class Weight(StrEnum):
    """How much it matters."""

    GOOD = "good"
    MIND = "mind"
    BAD = "bad"


@dataclass(frozen=True, slots=True)
class Advice:
    """One thing that was found.

    weight: how much it matters
    says: what is so
    do: what to do about it; "" where nothing needs to be done
    """

    weight: Weight
    says: str
    do: str = ""


def worst(found: tuple[Advice, ...]) -> Weight:
    """The heaviest of them; good where there is none."""
    order = list(Weight)
    return max((one.weight for one in found), key=order.index, default=Weight.GOOD)


def room_advice(room: RoomSound, device_rate: int) -> tuple[Advice, ...]:
    """What was found in the room, the worst first. *device_rate*: what the microphone delivers (Hz)."""
    return _sorted(_of_room(room, device_rate))


def voice_advice(room: RoomSound, voice: Loudness, target: Target = Target.ONLINE) -> tuple[Advice, ...]:
    """What was found of a sentence that was spoken in that room, the worst first."""
    return _sorted(_of_voice(room, voice, target))


def _sorted(found: Iterator[Advice]) -> tuple[Advice, ...]:
    order = list(Weight)
    return tuple(sorted(found, key=lambda one: -order.index(one.weight)))


def _of_room(room: RoomSound, device_rate: int) -> Iterator[Advice]:
    if room.dead:
        yield Advice(
            Weight.BAD,
            tr("Nothing at all arrives from the microphone."),
            tr("Is it muted, by a switch on it or in the system's sound settings? Or is it another one?"),
        )
        return
    if room.clipped:
        yield Advice(
            Weight.BAD,
            tr("Sound was cut off although nobody spoke."),
            tr("Turn the microphone's gain far down, and look at its cable."),
        )
    level = round(room.noise)
    if room.noise > LOUD:
        yield Advice(
            Weight.BAD,
            tr("The noise of the room is {level} dBFS: it is heard in every pause.", level=_signed(level)),
            tr("Switch off fans, shut the windows, come nearer to the microphone and turn its gain down."),
        )
    elif room.noise > QUIET:
        yield Advice(
            Weight.MIND,
            tr("The noise of the room is {level} dBFS: good headphones hear it in the pauses.", level=_signed(level)),
            tr("Come nearer to the microphone and turn its gain down."),
        )
    else:
        yield Advice(Weight.GOOD, tr("The room is quiet: {level} dBFS.", level=_signed(level)))
    if room.hum is not None and room.hum.level > _BELOW_HEARING:
        audible = room.hum.level > QUIET
        yield Advice(
            Weight.BAD if audible else Weight.MIND,
            tr(
                "The mains hum at {mains} Hz: {level} dBFS, strongest at {strongest} Hz.",
                mains=round(room.hum.mains),
                level=_signed(round(room.hum.level)),
                strongest=round(room.hum.strongest),
            ),
            tr("Run a laptop from its battery, keep the cable away from power supplies, or use another socket."),
        )
    if room.clicks:
        yield Advice(
            Weight.MIND,
            tr("There was a click.") if room.clicks == 1 else tr("There were {count} clicks.", count=room.clicks),
            tr("Look at the cable and its plugs, and put telephones away."),
        )
    if room.events > 0.15:
        yield Advice(
            Weight.MIND,
            tr("For {seconds:.1f} s something was much louder than the room.", seconds=room.events),
            tr("If that was you, or a door, check again."),
        )
    if abs(room.offset) > 0.01:
        yield Advice(
            Weight.MIND,
            tr("The sound stands off the middle by {share:.0f} % of its range.", share=100 * abs(room.offset)),
            tr("That is the sound card's fault; loud words are cut off sooner. Another input may be better."),
        )
    if device_rate < _NARROW:
        yield Advice(
            Weight.BAD,
            tr("The microphone delivers {rate} samples a second, as a telephone does.", rate=device_rate),
            tr("A headset without a cable does that while its microphone is open: use another microphone."),
        )


def _of_voice(room: RoomSound, voice: Loudness, target: Target) -> Iterator[Advice]:
    if voice.integrated is None or (not room.dead and voice.integrated < room.noise + 6):
        yield Advice(
            Weight.BAD,
            tr("No voice was heard above the noise of the room."),
            tr("Speak as you will in the talk, and check again; is this the right microphone?"),
        )
        return
    loudness, peak = round(voice.integrated), round(voice.true_peak)
    figures = tr("{loudness} LUFS, peaks {peak} dBTP", loudness=_signed(loudness), peak=_signed(peak))
    if voice.true_peak > _TOO_HOT:
        down = max(3, round(voice.true_peak + 9))
        yield Advice(
            Weight.BAD,
            tr("The voice is too loud for the microphone: {figures}.", figures=figures),
            tr("Turn its gain down by about {decibels} dB.", decibels=down),
        )
    elif voice.integrated < _TOO_FAINT:
        up = min(round(_GOOD_TAKE - voice.integrated), round(-9 - voice.true_peak))
        yield Advice(
            Weight.MIND,
            tr("The voice is faint: {figures}.", figures=figures),
            tr("Come nearer, or turn the microphone's gain up by about {decibels} dB.", decibels=max(3, up)),
        )
    else:
        yield Advice(Weight.GOOD, tr("The voice is well placed: {figures}.", figures=figures))
    published = room.noise + target.loudness - voice.integrated
    if not room.dead and published > _HEARD:
        yield Advice(
            Weight.BAD if published > _DISTURBS else Weight.MIND,
            tr(
                "Published at {target} LUFS, the room behind the voice will stand at {level} dBFS.",
                target=_signed(round(target.loudness)),
                level=_signed(round(published)),
            ),
            tr("Half the distance to the microphone brings 6 dB."),
        )


def _signed(level: int) -> str:
    return f"−{-level}" if level < 0 else str(level)
