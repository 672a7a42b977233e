"""The study: its tree, its script, its running order, and the edits that alone may change it."""
