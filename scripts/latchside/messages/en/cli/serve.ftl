no-port = port { $port }: { $fault }. Name another one with --port.
serving = { $address } (Ctrl+C ends it)
again = The program or a list of pages has changed: starting again.
