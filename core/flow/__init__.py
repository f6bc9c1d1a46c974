"""ACTS KEPT -> WHERE A SESSION STANDS, and what each new act changes. The doors are work.work and the views in day."""
