find = Find it step by step
