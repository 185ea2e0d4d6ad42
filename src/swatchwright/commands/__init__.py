"""The command line: a thin face of the acts, for scripts and for a look without the window."""
