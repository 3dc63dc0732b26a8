"""Random prints with their truth."""
