"""What can go wrong when something is published, in sentences that a presenter understands."""

from studyboard.model.errors import StudyboardError


class DeliveryError(StudyboardError):
    """Something could not be published; the message says what and why. Nothing half-written is left."""


class DeliveryCancelledError(DeliveryError):
    """The user stopped the delivery; the target is as it was before."""
