"""The study file on disk, its history and its sound."""
