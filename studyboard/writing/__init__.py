"""What helps in writing the script: spelling, snippets, pronunciations, find and replace, the script as one text."""
