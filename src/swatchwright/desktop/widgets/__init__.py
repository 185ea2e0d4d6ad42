"""The parts that the window is made of, one a file."""
