"""Finding K and S of paints, and how well they are known, from what a painter can show of them."""
