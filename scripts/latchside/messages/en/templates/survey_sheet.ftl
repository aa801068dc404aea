sheet = Survey sheet
what = What to find out
opening = Opening ___
answer = Answer
sign = Name, date, signature:
