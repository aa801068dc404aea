between = { $low } to { $high }
