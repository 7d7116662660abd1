"""From the log to a report of progress and to the next plan."""
