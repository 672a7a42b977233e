"""The talk as a video: what is in its picture at each frame, painted, checked for flashes and written."""
