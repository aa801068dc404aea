find = Find it, one check at a time
no-script = The guided run needs a script. Without one, the plan below leads the same way.
