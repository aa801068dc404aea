weak = Use at least ten characters, not digits alone, and never a code of the panel.
differ = The two do not read alike.
again = The same again
working = Working…
