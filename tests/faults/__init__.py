"""What the world does to a service, tried on the real process: ``deploy/check --faults``. Not part of the tests."""
