"""Surveys: what a lead writes of a site and its openings, read and checked from YAML, JSON and sheets."""
