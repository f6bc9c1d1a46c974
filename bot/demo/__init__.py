"""The invented gym: people, plans and a history to try the service on. Nothing in it is real."""
