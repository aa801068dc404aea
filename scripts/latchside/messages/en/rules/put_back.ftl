rule = A check that needs protection off says how it is put back.
