"""What a film of paint looks like: its optics, its surface, wet and dry, and mixtures of paints."""
