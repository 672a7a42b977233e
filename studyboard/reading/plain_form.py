"""Sentences in plainer words: fillers left out, ways of saying brought to the one that the patterns know."""

from __future__ import annotations

import re
from collections.abc import Iterator

from studyboard.reading.scene import Scene, Sentence, expanded_sentences

_SLOT = re.compile(r"\{(\w+)\}")
#: So often is every rule applied within one sentence.
_AGAIN = 4


def in_plain_words(scene: Scene) -> Iterator[Sentence]:
    """Each sentence that can be said more plainly, once, its words at the places of those that they stand for."""
    for sentence, plainer in zip(scene.sentences, expanded_sentences(scene), strict=True):
        for pattern, template in scene.words.plain:
            for _ in range(_AGAIN):
                found = pattern.search(plainer.code)
                if found is None:
                    break
                said = _said(plainer, found, template)
                if said.code == plainer.code:
                    break
                plainer = said
        if plainer.code != sentence.code:
            yield plainer


def _said(sentence: Sentence, found: re.Match[str], template: str) -> Sentence:
    """The sentence with what was found in the words of the template."""
    first = sentence.token_at(found.start())
    code = sentence.code[: found.start()]
    places = [(place, token) for place, token in sentence.places if place < found.start()]
    begun, token = 0, first
    for slot in _SLOT.finditer(template):
        if template[begun : slot.start()]:
            places.append((len(code), token))
            code += template[begun : slot.start()]
        start, end = found.span(slot[1])
        if start >= 0:
            token = sentence.token_at(start)
            inside = [(place, at) for place, at in sentence.places if start < place < end]
            places += [(len(code), token), *((p - start + len(code), at) for p, at in inside)]
            code += sentence.code[start:end]
        begun = slot.end()
    if template[begun:]:
        places.append((len(code), token))
        code += template[begun:]
    shift = len(code) - found.end()
    places += [(place + shift, token) for place, token in sentence.places if place >= found.end()]
    return Sentence(sentence.start, sentence.end, code + sentence.code[found.end() :], tuple(places), plain=True)
