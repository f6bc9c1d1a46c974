"""What was done, against what was asked, comes in; standings go out. Fair to a beginner with two dumbbells."""
