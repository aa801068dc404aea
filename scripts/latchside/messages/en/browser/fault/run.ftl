ruled-out = Ruled out: { $causes }.
none-ruled-out = Nothing is ruled out yet.
gone = The fault is gone.
another = It is another fault: { $fault }.
passed-on = Passed on to: { $who }.
not-kept = { $fault } The run goes on, and is lost when this page is left.
