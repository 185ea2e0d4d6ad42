"""The window: a thin face of the acts, made with Qt."""
