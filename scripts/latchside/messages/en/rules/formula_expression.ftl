rule = An expression of a figure holds numbers, declared names, arithmetic and known functions.
