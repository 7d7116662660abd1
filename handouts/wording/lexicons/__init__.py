"""The words of each language, sorted into classes."""
