"""How long the talk takes, planned and recorded, and the one timeline that everything else is made from."""
