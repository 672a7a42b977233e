"""What can go wrong with a study, in sentences that a presenter understands."""


class StudyboardError(Exception):
    """Something that the user asked for and that cannot be done; the message says what and why."""


class EditRefusedError(StudyboardError):
    """An edit that would leave the study in a state that makes no sense; nothing was changed."""
