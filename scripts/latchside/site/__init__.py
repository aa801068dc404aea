"""Site: the one layer that knows MkDocs and Material."""
