missing =
    A PDF needs WeasyPrint, which is not installed. Install it with: pip install 'latchside[pdf]'. Or open index.html
    and print it to a file.
reason = It says: { $error }.
