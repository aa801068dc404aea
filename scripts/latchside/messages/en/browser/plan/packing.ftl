no-page = This browser opened no page for it. Save the document below, and print it from where it was put.
