"""Studyboard: a position-study board with a timed script, for people who explain chess games aloud."""

__version__ = "0.1.0"
