"""The store: one SQLite file for shelf and jobs, in which every edit can be undone."""
