find = Find the fault by the words of those who report it
