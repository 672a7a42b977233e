"""An edit timeline as an editor gets it: converted by the adapter for Final Cut Pro 7 XML (otio-fcp-adapter, by the
Academy Software Foundation), which is not ours, and read with the standard library."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from pathlib import Path

import opentimelineio as otio

from studyboard.delivery.deliver import deliver
from studyboard.delivery.items.timeline import TimelineOptions
from studyboard.delivery.product import Item
from studyboard.example import example_study
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Happening


def test_another_format_for_editors_has_the_same_length_and_markers(tmp_path: Path) -> None:
    study = example_study()
    deliver(study, tmp_path, {Item.TIMELINE}, options={Item.TIMELINE: TimelineOptions(rate=25)})
    (path,) = tmp_path.glob("*.otio")
    timeline = otio.adapters.read_from_file(str(path))
    xml = ElementTree.fromstring(otio.adapters.write_to_string(timeline, "fcp_xml"))
    sequence = xml.find(".//sequence")
    assert sequence is not None
    talk = plan(study)
    assert sequence.findtext("rate/timebase") == "25"
    assert sequence.findtext("duration") == str(round(talk.seconds * 25))
    frames = [int(one.text or "") for one in sequence.findall("marker/in")]
    beats = {round(stretch.start * 25) for stretch in talk.stretches}
    assert beats <= set(frames)
    moves = sum(event.what in (Happening.MOVE, Happening.BACK) for event in talk.events)
    assert moves == len(timeline.video_tracks()[0][0].markers)
