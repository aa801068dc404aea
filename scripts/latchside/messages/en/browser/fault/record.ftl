list = Fault: { $fault }
