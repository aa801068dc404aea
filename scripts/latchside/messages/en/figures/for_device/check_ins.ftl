grade = grade { $number }
