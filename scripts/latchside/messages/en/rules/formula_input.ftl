rule = What a figure takes fits together: defaults in range, inputs and models that exist.
