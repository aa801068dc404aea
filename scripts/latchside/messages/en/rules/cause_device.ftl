rule = Each device that a cause names lists the fault.
