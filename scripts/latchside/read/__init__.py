"""Read: files become plain values, each with its place. Nothing here knows what a record means."""
