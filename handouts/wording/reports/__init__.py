"""Findings to what is printed: lines, JSON, SARIF, and the explanations of kinds."""
