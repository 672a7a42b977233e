"""The desk: the Qt windows in which a talk is written, rehearsed and recorded."""
