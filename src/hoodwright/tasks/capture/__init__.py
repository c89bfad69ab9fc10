"""The captured share of what a source gives off: one file for the job, its parts beside it."""
