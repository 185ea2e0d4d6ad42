"""The plan of work: what is done in which order, on which days, and with what care."""
