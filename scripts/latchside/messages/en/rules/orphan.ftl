rule = Every procedure, checklist, fault, caution, tool, table and source is used by another record.
