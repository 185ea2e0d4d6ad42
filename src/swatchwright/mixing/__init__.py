"""Which paints make the wanted colour, and how much of each."""
