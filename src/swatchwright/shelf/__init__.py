"""Where the paints are kept: shelf files, and the shelf of the demonstration."""
