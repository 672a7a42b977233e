"""The read-through: what a spoken line says, checked against the board."""
