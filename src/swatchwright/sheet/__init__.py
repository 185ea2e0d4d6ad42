"""Recipe sheets and jar labels: what they say, how they are laid out, and the code on them."""
