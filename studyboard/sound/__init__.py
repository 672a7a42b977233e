"""Microphone, takes and loudness; needs the extra `sound`, but may be imported without it."""
