"""Finding when each word of the script is said in a recording."""
