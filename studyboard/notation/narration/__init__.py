"""Reading moves as people say them: from a talk in words to moves on the tree."""
