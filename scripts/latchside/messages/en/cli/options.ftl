only-read = The project that came with this command is only read. Write one of your own: { $command }
