"""How big a piece is, how much paint it takes, and when to paint it."""
