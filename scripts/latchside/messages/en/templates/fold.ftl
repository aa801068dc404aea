print-all = Print everything
