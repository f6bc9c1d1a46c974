"""Who may say what: lifters, coaches, groups, newcomers and strangers. Routes; leaves every decision to core."""
