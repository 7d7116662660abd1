"""The trainer's arithmetic: weights, strength and time.  Numbers in, numbers out."""
