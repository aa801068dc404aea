"""Latchside: a field library for intruder-alarm contacts.

Data flows one way: read → schemas → library → rules and figures → pages → site.
"""
